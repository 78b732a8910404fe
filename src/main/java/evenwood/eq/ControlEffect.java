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
        double hz = setting.frequencyHz();
        return Optional.of(switch (control.kind()) {
            case LOW_SHELF -> EqFilter.lowShelf(hz, control.q(), setting.gainDb());
            case HIGH_SHELF -> EqFilter.highShelf(hz, control.q(), setting.gainDb());
            case PEAK -> EqFilter.peak(hz, control.q(), setting.gainDb());
            case HIGH_PASS -> new EqFilter(FilterKind.HIGH_PASS, hz, control.q(), 0, control.order());
            case NOTCH -> control.gain().isPresent() ? EqFilter.peak(hz, control.q(), setting.gainDb()) : EqFilter.notch(hz, control.q());
            case GAIN, VOLUME -> throw new IllegalStateException("shapesTone() lets no gain pass");
        });
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
