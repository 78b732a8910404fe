package evenwood.takes;

import java.nio.file.Path;

/**
 * A sampled-instrument bank of a Debian package: real instruments, recorded note by note by others.
 *
 * <p>They are installed for the tests (see {@code .ci/run}) and never committed.
 */
public enum SampledBank {
    TIM("timgm6mb-soundfont", "/usr/share/sounds/sf2/TimGM6mb.sf2"),
    CSOUND("csound-soundfont", "/usr/share/sounds/sf2/sf_GMbank.sf2"),
    MUSESCORE("musescore-general-soundfont", "/usr/share/sounds/sf3/MuseScore_General.sf3"),
    /** A folder of patch files, one a program; the others are SoundFonts. */
    FREEPATS("freepats", "/usr/share/midi/freepats/Tone_000"),
    /** Folders of single recorded notes, one an instrument, from npm packages; see {@link NotePackages}. */
    RECORDED_NOTES("npm: tonejs-instrument-…-mp3", "target/takes/npm");

    private final String debianPackage;
    private final String file;

    SampledBank(String debianPackage, String file) {
        this.debianPackage = debianPackage;
        this.file = file;
    }

    public String debianPackage() {
        return debianPackage;
    }

    public Path file() {
        return Path.of(file);
    }
}
