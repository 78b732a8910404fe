/** Arithmetic of the screen: decibels, hertz, seconds and positions to parts of a length. Knows no screen. */
package evenwood.ui.scale;
