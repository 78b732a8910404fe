package evenwood.takes;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;

/** Notes as a standard MIDI file: one track, 960 ticks to a beat of half a second, so that a tick is 0.52 ms. */
final class MidiScore {
    private static final int TICKS_PER_BEAT = 960;
    private static final double TICKS_PER_SECOND = 2.0 * TICKS_PER_BEAT;

    private MidiScore() { }

    static byte[] of(List<PlayedNote> notes, PlayedInstrument.Voice voice, double lengthSeconds) {
        try {
            Sequence sequence = new Sequence(Sequence.PPQ, TICKS_PER_BEAT);
            Track track = sequence.createTrack();
            byte[] halfSecondBeats = {0x07, (byte) 0xA1, 0x20};
            track.add(new MidiEvent(new MetaMessage(0x51, halfSecondBeats, 3), 0));
            track.add(new MidiEvent(new ShortMessage(ShortMessage.CONTROL_CHANGE, 0, 0, voice.midiBank()), 0));
            track.add(new MidiEvent(new ShortMessage(ShortMessage.PROGRAM_CHANGE, 0, voice.program(), 0), 1));
            for (PlayedNote note : notes) {
                track.add(new MidiEvent(new ShortMessage(ShortMessage.NOTE_ON, 0, note.midi(), note.velocity()), ticks(note.startSeconds())));
                track.add(new MidiEvent(new ShortMessage(ShortMessage.NOTE_OFF, 0, note.midi(), 0), ticks(note.endSeconds())));
            }
            // A harmless last event: the renderer goes on at least until here.
            track.add(new MidiEvent(new ShortMessage(ShortMessage.CONTROL_CHANGE, 0, 1, 0), ticks(lengthSeconds)));
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            MidiSystem.write(sequence, 0, bytes);
            return bytes.toByteArray();
        } catch (InvalidMidiDataException e) {
            throw new IllegalStateException("write take as MIDI: " + e.getMessage(), e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static long ticks(double seconds) {
        return Math.round(seconds * TICKS_PER_SECOND);
    }
}
