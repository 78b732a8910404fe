package evenwood.report;

import evenwood.journal.Event;
import evenwood.journal.KeptTake;
import evenwood.journal.Practice;
import evenwood.journal.TakeLine;
import evenwood.rig.Rig;
import java.util.List;

/**
 * What the journal's commands print with {@code --json}. Field names are stable and stand in {@code docs/journal.schema.json};
 * an absent value is {@code null}.
 *
 * <p>Kept readings with every digit come from {@code journal export}; here a take is as {@code check --json} prints it.
 */
public final class JournalJson {
    private JournalJson() { }

    public static String list(List<TakeLine> takes) {
        return JsonFields.object("evenwood.journal-list/1", json -> json.parts("takes", takes, JournalJson::take));
    }

    /** The take's line, its settings, and under {@code check} all of that day's result. */
    public static String show(KeptTake take, List<Event> events, Sentences sentences) {
        return JsonFields.object("evenwood.journal-take/1", json -> {
            take(json, take.line());
            json.parts("settings", take.rig().map(Rig::settings).orElse(List.of()), (part, setting) -> part
                    .text("control", setting.control().name()).text("position", setting.say()))
                .parts("events", events, JournalJson::event)
                .raw("check", CheckJson.line(take.assessment(), sentences));
        });
    }

    public static String events(List<Event> events) {
        return JsonFields.object("evenwood.journal-events/1", json -> json.parts("events", events, JournalJson::event));
    }

    public static String practice(List<Practice> sittings) {
        return JsonFields.object("evenwood.journal-practice/1", json -> json.parts("practice", sittings, JournalJson::sitting));
    }

    private static void sitting(JsonFields json, Practice sitting) {
        Practice.Figures heard = sitting.figures();
        json.text("at", sitting.at().toString())
            .text("instrument", sitting.instrument())
            .number("listenedSeconds", heard.listenedSeconds())
            .number("playingSeconds", heard.playingSeconds())
            .count("notes", heard.notes())
            .number("softDbfs", heard.softDbfs())
            .number("usualDbfs", heard.usualDbfs())
            .number("hardDbfs", heard.hardDbfs())
            .number("integratedLufs", heard.integratedLufs())
            .number("lowDb", heard.lowDb())
            .number("midDb", heard.midDb())
            .number("highDb", heard.highDb())
            .number("truePeakDbtp", heard.truePeakDbtp())
            .count("clippedSamples", heard.clippedSamples());
    }

    private static void event(JsonFields json, Event event) {
        json.text("at", event.at().toString())
            .text("kind", event.kind().id())
            .text("instrument", event.instrument())
            .text("note", event.note());
    }

    private static void take(JsonFields json, TakeLine take) {
        json.count("id", take.id())
            .text("uid", take.uid())
            .text("keptAt", take.keptAt().toString())
            .text("name", take.name())
            .number("durationSeconds", take.durationSeconds())
            .text("instrument", take.instrument())
            .text("rig", take.rigName())
            .text("venue", take.venue())
            .text("note", take.note())
            .texts("tags", take.tags())
            .parts("findings", take.faults(), JournalJson::finding)
            .flag("sound", take.hasAudio());
    }

    /** @param fault as a take's line has it, "hum:strong" */
    private static void finding(JsonFields json, String fault) {
        String[] parts = fault.split(":");
        json.text("fault", parts[0]).text("severity", parts[1]);
    }
}
