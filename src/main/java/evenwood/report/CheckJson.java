package evenwood.report;

import evenwood.coach.Assessment;
import evenwood.coach.Comparison;
import evenwood.coach.Move;
import evenwood.coach.Prediction;
import evenwood.judge.BandHz;
import evenwood.judge.Finding;
import evenwood.judge.Statement;
import evenwood.judge.WiringComparison;
import evenwood.measure.ToneDifference;
import java.util.List;
import java.util.Optional;

/**
 * The result of a check as one JSON object, {@code evenwood.check/1}.
 *
 * <p>Field names are stable and stand in {@code docs/check.schema.json} (CheckJsonTest holds one against the other).
 * A measurement that is absent, infinite or of silence is {@code null}.
 */
public final class CheckJson {
    private static final String SCHEMA = "evenwood.check/1";

    private final Sentences sentences;

    private CheckJson(Sentences sentences) {
        this.sentences = sentences;
    }

    /** The object over many lines, for people too. */
    public static String of(Assessment assessment, Sentences sentences) {
        return JsonFields.object(SCHEMA, json -> new CheckJson(sentences).write(json, assessment));
    }

    /** The same object on one line, for a stream of lines. */
    public static String line(Assessment assessment, Sentences sentences) {
        return JsonFields.line(SCHEMA, json -> new CheckJson(sentences).write(json, assessment));
    }

    private void write(JsonFields json, Assessment assessment) {
        ReadingsJson.write(json, assessment.readings(), assessment.verdict().tone());
        json.parts("findings", assessment.verdict().findings(), this::finding);
        json.parts("moves", assessment.moves(), this::move);
        json.part("predicted", assessment.predicted(), CheckJson::prediction);
        json.texts("missing", said(assessment.verdict().missing()));
        json.part("comparison", assessment.comparison(), this::comparison);
        assessment.verdict().wiring().ifPresent(wiring -> json.part("wiring", part -> wiring(part, wiring)));
    }

    private void finding(JsonFields json, Finding finding) {
        json.text("fault", finding.fault().id())
            .text("severity", finding.severity().id())
            .number("probability", finding.probability())
            .text("evidence", sentences.say(finding.evidence()));
        Optional<BandHz> band = finding.bandHz();
        if (band.isPresent()) {
            json.numbers("bandHz", band.get().lowHz(), band.get().highHz());
        } else {
            json.nothing("bandHz");
        }
    }

    private void move(JsonFields json, Move move) {
        json.count("order", move.order())
            .text("control", sentences.say(move.control().plainName()))
            .text("kind", move.kind().id())
            .number("frequencyHz", move.frequencyHz())
            .number("q", move.q())
            .number("fromDb", move.fromDb())
            .number("toDb", move.toDb())
            .number("changeDb", move.changeDb())
            .text("from", move.from())
            .text("to", move.to())
            .text("why", sentences.say(move.why()))
            .text("fault", move.fault().id());
    }

    private static void prediction(JsonFields json, Prediction prediction) {
        json.parts("bands", prediction.tone().orElse(ToneDifference.NONE).bands(), (part, band) -> part
                .number("centreHz", band.centreHz())
                .number("differenceDb", band.differenceDb()))
            .number("truePeakDbtp", prediction.peak().truePeakDbtp());
    }

    private void comparison(JsonFields json, Comparison comparison) {
        json.text("before", comparison.before())
            .parts("faults", comparison.faults(), (part, change) -> part
                .text("fault", change.fault().id())
                .text("change", change.change().id())
                .number("confidence", change.confidence())
                .number("changeDb", change.changeDb())
                .number("uncertaintyDb", change.halfWidthDb())
                .text("evidence", sentences.say(change.evidence())))
            .parts("moves", comparison.answers(), (part, answer) -> part
                .text("control", answer.control().name())
                .text("from", answer.from().say())
                .text("to", answer.to().say())
                .number("meantDb", answer.meantDb())
                .number("answeredDb", answer.answeredDb())
                .number("uncertaintyDb", answer.halfWidthDb()));
    }

    private void wiring(JsonFields json, WiringComparison wiring) {
        json.number("levelDifferenceDb", wiring.levelDb())
            .number("levelUncertaintyDb", 2 * wiring.levelDeviationDb())
            .number("noiseDifferenceDb", wiring.noiseDb())
            .number("predictedBassCornerHz", wiring.predictedBassCornerHz())
            .number("heardBassCornerHz", wiring.heardBassCornerHz())
            .number("loadedProbability", wiring.loadedProbability())
            .texts("statements", said(wiring.statements()));
    }

    private List<String> said(List<Statement> statements) {
        return statements.stream().map(sentences::say).toList();
    }
}
