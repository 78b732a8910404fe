package evenwood.judge;

import java.util.Arrays;
import java.util.Optional;

/** Everything that can be wrong with a take; the ids are the words of the trade and never change. */
public enum Fault {
    CLIPPING("clipping"), OVERDRIVEN("overdriven"), TOO_HOT("too-hot"), TOO_QUIET("too-quiet"),
    HUM("hum"), BUZZ("buzz"), HISS("hiss"), TONE_INTERFERENCE("tone-interference"), CRACKLE("crackle"), DROPOUT("dropout"),
    BOOMY("boomy"), BOXY("boxy"), NASAL("nasal"), HARSH("harsh"), THIN("thin"), DULL("dull"),
    RINGING("ringing"), LOADED_PICKUP("loaded-pickup");

    private final String id;

    Fault(String id) {
        this.id = id;
    }

    public String id() {
        return id;
    }

    public static Optional<Fault> ofId(String id) {
        return Arrays.stream(values()).filter(fault -> fault.id.equals(id)).findFirst();
    }
}
