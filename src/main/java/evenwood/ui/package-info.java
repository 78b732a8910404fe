/**
 * The window. In: everything the other packages know. Out: pictures and the player's choices. Nobody may depend on it; it must
 * not call commands. {@code scale} is arithmetic, {@code model} holds words and states and no widget, {@code paint} draws,
 * {@code screen} lays out ({@code docs/window.md}).
 */
package evenwood.ui;
