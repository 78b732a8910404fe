package evenwood.report;

import java.util.List;
import java.util.Optional;

/** A noise hunt as one JSON object, {@code evenwood.hunt/1}; the fields stand in {@code docs/hunt.schema.json}. */
public final class HuntJson {
    private HuntJson() { }

    /** @param rig its name, if there is one */
    public static String of(HuntPicture picture, Optional<String> rig, List<String> remarks) {
        return JsonFields.object("evenwood.hunt/1", json -> {
            json.text("rig", rig)
                .text("standing", JsonFields.word(picture.standing()))
                .text("hunted", JsonFields.word(picture.hunted()));
            bars(json, "noise", picture.noise());
            json.parts("trials", picture.steps(), HuntJson::step)
                .parts("ranking", picture.suspects(), (part, cause) -> part
                    .text("cause", cause.id()).number("probability", cause.probability()).text("words", cause.words()))
                .number("unlistedProbability", picture.unlisted())
                .text("cause", picture.cure().map(cure -> picture.suspects().get(0).id()))
                .text("cure", picture.cure())
                .text("conclusion", picture.conclusion())
                .part("next", picture.next(), HuntJson::task)
                .texts("notOffered", picture.notOffered())
                .texts("remarks", remarks);
        });
    }

    private static void step(JsonFields json, HuntPicture.Step step) {
        task(json, step.task());
        bars(json, "before", step.before());
        bars(json, "after", step.after());
        json.number("changeDb", step.changeDb())
            .number("uncertaintyDb", step.halfWidthDb())
            .text("outcome", JsonFields.word(step.outcome()));
    }

    private static void task(JsonFields json, HuntPicture.Task task) {
        json.text("trial", task.id()).text("words", task.words());
    }

    private static void bars(JsonFields json, String field, List<HuntPicture.Bar> bars) {
        json.part(field, all -> bars.forEach(bar -> all.part(JsonFields.word(bar.part()), part -> part
            .number("levelDbfs", bar.levelDbfs())
            .number("uncertaintyDb", bar.halfWidthDb())
            .flag("noticeable", bar.noticeable()))));
    }
}
