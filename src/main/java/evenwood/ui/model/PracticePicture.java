package evenwood.ui.model;

import evenwood.journal.Practice;
import evenwood.journal.PracticeDays;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What the practice log holds.
 *
 * @param total    minutes and days, in words
 * @param minutes  played on each of the last days, oldest first, today last
 * @param from     the first of these days
 * @param to       the last
 * @param sittings the latest, newest first
 */
public record PracticePicture(String total, List<Double> minutes, String from, String to, List<Sitting> sittings) {
    private static final int MOST_SITTINGS = 8;

    /**
     * @param when       day and time
     * @param instrument what was played
     * @param minutes    how long
     * @param dynamics   soft, usual and hard notes
     * @param loudness   integrated
     * @param treble     against what is usual for this instrument; empty while too few are known
     */
    public record Sitting(String when, String instrument, String minutes, String dynamics, String loudness, String treble) { }

    public boolean isEmpty() {
        return sittings.isEmpty();
    }

    /** @param all oldest first */
    public static PracticePicture of(List<Practice> all, LocalDate today, Words words) {
        JournalWords said = new JournalWords(words);
        PracticeDays days = PracticeDays.of(all, today);
        List<Double> minutes = new ArrayList<>();
        LocalDate first = today.minusDays(PracticeDays.SPAN_DAYS - 1L);
        for (LocalDate day = first; !day.isAfter(today); day = day.plusDays(1)) {
            LocalDate that = day;
            minutes.add(all.stream().filter(each -> each.at().toLocalDate().equals(that)).mapToDouble(each -> each.figures().playingSeconds()).sum() / 60);
        }
        List<Sitting> sittings = new ArrayList<>();
        for (int i = all.size() - 1; i >= Math.max(0, all.size() - MOST_SITTINGS); i--) {
            sittings.add(sitting(all.get(i), all, said, words));
        }
        return new PracticePicture(words.say("practice.total", days.minutes(), days.days(), PracticeDays.SPAN_DAYS, days.streakDays()), List.copyOf(minutes),
            said.day(first.atStartOfDay(ZoneId.systemDefault()).toInstant()), words.say("practice.today"), List.copyOf(sittings));
    }

    private static Sitting sitting(Practice one, List<Practice> all, JournalWords said, Words words) {
        Practice.Figures heard = one.figures();
        OptionalDouble treble = PracticeDays.trebleAgainstUsual(one, all);
        return new Sitting(said.moment(one.at()), said.instrument(one.instrument()), words.say("practice.minutes", Math.round(heard.playingSeconds() / 60)),
            words.say("practice.dynamics", level(heard.softDbfs(), words), level(heard.usualDbfs(), words), level(heard.hardDbfs(), words), words.say("unit.dbfs")),
            words.level(heard.integratedLufs(), "unit.lufs"), treble.isEmpty() ? "" : words.change(Math.rint(treble.getAsDouble() * 10) / 10));
    }

    private static String level(double dbfs, Words words) {
        return Double.isFinite(dbfs) ? words.number(dbfs, 0) : words.say("number.none");
    }
}
