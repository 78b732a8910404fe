package evenwood.takes;

/**
 * A take with a fault put in, and the exact truth about it.
 *
 * @param samples a fresh array; the clean one is left alone
 * @param truth   what a perfect meter would say of the fault
 */
public record Injected<T>(float[] samples, T truth) { }
