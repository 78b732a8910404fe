/** Lays the window out, binds it to the models and sends the player's clicks and keys to them. Computes nothing. */
package evenwood.ui.screen;
