package evenwood.rig;

import java.util.List;

/** Strings that are played together as one, such as a mandolin's pairs. */
public record Course(List<OpenString> strings) {
    public Course {
        strings = List.copyOf(strings);
    }

    /**
     * @param note   name of the open string, scientific pitch, C4 is middle C
     * @param openHz its frequency at A4 = 440 Hz
     */
    public record OpenString(String note, double openHz) { }
}
