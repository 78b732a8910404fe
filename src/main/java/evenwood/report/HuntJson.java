package evenwood.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A noise hunt as one JSON object, {@code evenwood.hunt/1}; the fields stand in {@code docs/hunt.schema.json}. */
public final class HuntJson {
    private final JsonGenerator json;

    private HuntJson(JsonGenerator json) {
        this.json = json;
    }

    /** @param rig its name, if there is one */
    public static String of(HuntPicture picture, Optional<String> rig, List<String> remarks) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.useDefaultPrettyPrinter();
            new HuntJson(json).write(picture, rig, remarks);
        } catch (IOException cannotHappen) {
            throw new UncheckedIOException(cannotHappen);
        }
        return text.toString();
    }

    private void write(HuntPicture picture, Optional<String> rig, List<String> remarks) throws IOException {
        json.writeStartObject();
        json.writeStringField("schema", "evenwood.hunt/1");
        text("rig", rig);
        json.writeStringField("standing", word(picture.standing()));
        json.writeStringField("hunted", word(picture.hunted()));
        bars("noise", picture.noise());
        json.writeArrayFieldStart("trials");
        for (HuntPicture.Step step : picture.steps()) {
            step(step);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("ranking");
        for (HuntPicture.Cause cause : picture.suspects()) {
            json.writeStartObject();
            json.writeStringField("cause", cause.id());
            number("probability", cause.probability());
            json.writeStringField("words", cause.words());
            json.writeEndObject();
        }
        json.writeEndArray();
        text("cause", picture.cure().map(cure -> picture.suspects().get(0).id()));
        text("cure", picture.cure());
        json.writeStringField("conclusion", picture.conclusion());
        if (picture.next().isPresent()) {
            json.writeObjectFieldStart("next");
            task(picture.next().get());
            json.writeEndObject();
        } else {
            json.writeNullField("next");
        }
        texts("notOffered", picture.notOffered());
        texts("remarks", remarks);
        json.writeEndObject();
    }

    private void step(HuntPicture.Step step) throws IOException {
        json.writeStartObject();
        task(step.task());
        bars("before", step.before());
        bars("after", step.after());
        number("changeDb", step.changeDb());
        number("uncertaintyDb", step.halfWidthDb());
        json.writeStringField("outcome", word(step.outcome()));
        json.writeEndObject();
    }

    private void task(HuntPicture.Task task) throws IOException {
        json.writeStringField("trial", task.id());
        json.writeStringField("words", task.words());
    }

    private void bars(String field, List<HuntPicture.Bar> bars) throws IOException {
        json.writeObjectFieldStart(field);
        for (HuntPicture.Bar bar : bars) {
            json.writeObjectFieldStart(word(bar.part()));
            number("levelDbfs", bar.levelDbfs());
            number("uncertaintyDb", bar.halfWidthDb());
            json.writeBooleanField("noticeable", bar.noticeable());
            json.writeEndObject();
        }
        json.writeEndObject();
    }

    private void texts(String field, List<String> texts) throws IOException {
        json.writeArrayFieldStart(field);
        for (String each : texts) {
            json.writeString(each);
        }
        json.writeEndArray();
    }

    private void text(String field, Optional<String> text) throws IOException {
        if (text.isPresent()) {
            json.writeStringField(field, text.get());
        } else {
            json.writeNullField(field);
        }
    }

    private void number(String field, double value) throws IOException {
        json.writeNumberField(field, new BigDecimal(BigDecimal.valueOf(value).setScale(4, RoundingMode.HALF_EVEN).stripTrailingZeros().toPlainString()));
    }

    private static String word(Enum<?> kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }
}
