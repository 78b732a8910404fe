package evenwood.measure;

/**
 * Where something was struck.
 *
 * @param step      of {@link AttackSteps}
 * @param clearness 0 for what is only just told from nothing, 1 for what no other place of the steps would hide
 */
record Onset(long step, double clearness) { }
