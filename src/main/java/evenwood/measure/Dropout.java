package evenwood.measure;

/** One hole. @param kind what stands in it   @param startFrame frame of the take   @param frames how long */
record Dropout(Kind kind, long startFrame, int frames) {
    enum Kind { ZEROS, HELD_SAMPLE, REPEATED_BLOCK }
}
