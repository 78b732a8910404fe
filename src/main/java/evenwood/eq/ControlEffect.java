package evenwood.eq;

import evenwood.rig.Control;
import evenwood.rig.Setting;
import java.util.Optional;

/** What a control at a position does to sound, by its nominal law. */
public final class ControlEffect {
    private ControlEffect() { }

    /** The filter that a tone control makes of its position; nothing for gain, volume, and what is switched off. */
    public static Optional<EqFilter> filter(Setting setting) {
        Control control = setting.control();
        if (!setting.on() || !control.shapesTone()) {
            return Optional.empty();
        }
        return Optional.of(filter(control, setting.frequencyHz(), control.q(), setting.gainDb()));
    }

    /** The filter of a tone control's kind, with other figures than its own. */
    static EqFilter filter(Control control, double hz, double q, double gainDb) {
        return switch (control.kind()) {
            case LOW_SHELF -> EqFilter.lowShelf(hz, q, gainDb);
            case HIGH_SHELF -> EqFilter.highShelf(hz, q, gainDb);
            case PEAK -> EqFilter.peak(hz, q, gainDb);
            case HIGH_PASS -> new EqFilter(FilterKind.HIGH_PASS, hz, q, 0, control.order());
            case NOTCH -> control.gain().isPresent() ? EqFilter.peak(hz, q, gainDb) : EqFilter.notch(hz, q);
            case GAIN, VOLUME -> throw new IllegalArgumentException("filter of " + control.name() + ": it does not shape the tone");
        };
    }

    /** Decibels that a gain or volume control gives; 0 for tone controls. */
    public static double gainDb(Setting setting) {
        return setting.control().shapesTone() || !setting.on() ? 0 : setting.gainDb();
    }

    /** Decibels at a frequency, tone and gain together. */
    public static double responseDb(Setting setting, double atHz, double sampleRateHz) {
        return filter(setting).map(filter -> filter.responseDb(atHz, sampleRateHz)).orElse(0.0) + gainDb(setting);
    }
}
