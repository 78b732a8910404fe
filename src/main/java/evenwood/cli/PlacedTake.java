package evenwood.cli;

import evenwood.rig.Control;
import evenwood.rig.Setting;

/**
 * A take or recording and where the control stood: {@code kitchen.wav@4.5}.
 *
 * @param path the file
 * @param at   the position, as on the control's own marking
 */
record PlacedTake(String path, Setting at) {
    static PlacedTake of(String word, Control control) {
        int sign = word.lastIndexOf('@');
        if (sign < 1 || sign == word.length() - 1) {
            throw new BadInput("learn: " + word + ", but FILE@POSITION is needed, as in take.wav@5: the take and where "
                + control.name() + " stood");
        }
        return new PlacedTake(word.substring(0, sign), Setting.ofWord(control, word.substring(sign + 1)));
    }
}
