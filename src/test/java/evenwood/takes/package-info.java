/**
 * Takes for the tests, and the faults put into them.
 *
 * <p>Out: {@link evenwood.takes.PackagedTakes} (sampled real instruments of Debian packages, played from seeded scores whose
 * notes are known), {@link evenwood.takes.RecordedTakes} (recorded as they are), {@link evenwood.takes.Faults} (faults by kind
 * and amount with the exact truth), {@link evenwood.takes.TakeFile} (plain WAV files). Nothing here uses the product's
 * own readers or meters, so that each can check the other.
 */
package evenwood.takes;
