/**
 * What a control does to sound, nominal or learned, and which positions would bring a spectrum where it should be.
 *
 * <p>In: controls of {@code rig}, band readings of {@code measure}. Out: filters, predicted curves, control positions. Must
 * not know findings, files or screens.
 */
package evenwood.eq;
