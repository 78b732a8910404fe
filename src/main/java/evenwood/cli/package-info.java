/**
 * The commands: thin words in front of the plain classes that the window uses too. Only here are arguments parsed, is
 * standard output written and are exit codes chosen.
 */
package evenwood.cli;
