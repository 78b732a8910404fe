package evenwood.journal;

import java.util.concurrent.CancellationException;

/** Told before each step of an export, for somebody who watches it and may break it off. Thread: the one that exports. */
public interface ExportSteps {
    /** Nobody watches. */
    ExportSteps ALL = (done, all) -> { };

    /** @throws CancellationException when no more is wanted; what was written until then is no whole file */
    void next(int done, int all);
}
