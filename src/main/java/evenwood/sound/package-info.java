/**
 * Where samples come from and go: files, live inputs, the demo performer.
 *
 * <p>In: bytes and devices. Out: {@link evenwood.sound.AudioBlock}s of one channel, full scale ±1.0. Knows no other package of
 * ours: what is made of the samples is not its business.
 */
package evenwood.sound;
