package evenwood.coach.hunt;

/** A cause and how likely it is by now. */
public record Suspect(String cause, double probability) { }
