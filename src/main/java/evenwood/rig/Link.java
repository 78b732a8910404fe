package evenwood.rig;

/** One thing the signal passes on its way: a cable or a box. */
public sealed interface Link permits CableRun, PluggedBox {
}
