/**
 * Facts: instruments, pickups, cables, boxes, inputs and controls, read from YAML and checked.
 *
 * <p>In: files. Out: immutable records, or a {@link evenwood.rig.PresetProblem} naming file, line and field. Must not know
 * sound, meters or screens.
 */
package evenwood.rig;
