package evenwood.eq;

import evenwood.rig.Setting;

/** What a control does at each of its positions: {@link NominalLaw by its data} or {@link LearnedLaw as heard on this rig}. */
public interface ControlLaw {
    /** Decibels in each band, tone and gain together; only differences between settings of one control mean anything. */
    double[] bandsDb(Setting setting, BandResponse response);

    /** What must be done to a take made at one setting so that it sounds as if made at another. */
    EqChain change(Setting from, Setting to, BandResponse response);
}
