/** What the screens show and choose, in words and states: no widget, testable without a screen. */
package evenwood.ui.model;
