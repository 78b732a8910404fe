/** Draws pictures of the model on a canvas. Keeps no state but colours and letters; decides nothing. */
package evenwood.ui.paint;
