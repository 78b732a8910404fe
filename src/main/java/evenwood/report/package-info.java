/**
 * Results become words and files: text for the terminal, JSON for programs, sheets for the music stand.
 *
 * <p>In: what the other packages found out. Out: text. Must not measure or decide anything.
 */
package evenwood.report;
