package evenwood.measure;

/**
 * One line of a standard's table and what our meter reads.
 *
 * @param group    the case in the document; a case may have several signals or several things to read
 * @param name     which of them
 * @param expected the document's value
 * @param plus     allowed above it
 * @param minus    allowed below it
 * @param ours     what our meter read
 */
record StandardCase(String group, String name, String unit, double expected, double plus, double minus, double ours) {
    double difference() {
        return ours - expected;
    }

    @Override
    public String toString() {
        return group + " " + name;
    }
}
