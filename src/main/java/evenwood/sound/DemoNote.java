package evenwood.sound;

/**
 * One pair of strings struck once in the demo.
 *
 * @param startSeconds when the pick leaves the first string of the pair
 * @param stopSeconds  when a hand comes down on it
 * @param course       0 for the lowest pair to 3 for the highest
 * @param fret         0 for open
 * @param strength     0 for the softest to 1 for the hardest stroke
 */
record DemoNote(double startSeconds, double stopSeconds, int course, int fret, double strength) {
    /** Open strings G2 D3 A3 E4 as MIDI notes (common practice). */
    private static final int[] OPEN_MIDI = {43, 50, 57, 64};
    static final int COURSES = OPEN_MIDI.length;

    int midi() {
        return OPEN_MIDI[course] + fret;
    }

    /** Equal temperament on A4 = 440 Hz (ISO 16). */
    double hz() {
        return hz(midi());
    }

    static double openHz(int course) {
        return hz(OPEN_MIDI[course]);
    }

    private static double hz(int midi) {
        return 440 * Math.pow(2, (midi - 69) / 12.0);
    }

    /** The highest course that can hold the note. */
    static int courseOf(int midi) {
        int course = COURSES - 1;
        while (course > 0 && OPEN_MIDI[course] > midi) {
            course--;
        }
        return course;
    }

    static int fretOf(int midi) {
        return midi - OPEN_MIDI[courseOf(midi)];
    }
}
