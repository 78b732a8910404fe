package evenwood.live;

import java.util.Locale;

/** What to check when an input delivers nothing, in one sentence. */
final class DeadInputAdvice {
    private DeadInputAdvice() { }

    /** @param soundOnChannel another channel of the device that does carry sound, counted from 1; 0 when there is none */
    static String words(SignalReading reading, int channel, int soundOnChannel) {
        String where = soundOnChannel > 0
            ? ", but channel " + soundOnChannel + " carries sound; choose that channel"
            : reading.kind() == SignalReading.Kind.STUCK
            ? "; check that the plug is fully in, then unplug the interface and plug it in again"
            : "; check the mute switch, that the plug is fully in, that the channel is the right one, and that this "
                + "program may use the microphone (on macOS: System Settings, Privacy & Security, Microphone, for the "
                + "terminal it was started from)";
        return what(reading, channel) + where;
    }

    private static String what(SignalReading reading, int channel) {
        return reading.kind() == SignalReading.Kind.STUCK
            ? String.format(Locale.ROOT, "channel %d is stuck at one value (%.4f of full scale)", channel, reading.value())
            : "channel " + channel + " delivers nothing but exact zeros";
    }
}
