package evenwood.sound;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import javax.sound.sampled.TargetDataLine;

/** A line without a device: reads are answered by a function, the rest does nothing. */
final class FakeLine {
    /** @return bytes delivered, as {@link TargetDataLine#read} */
    @FunctionalInterface
    interface Reader {
        int read(byte[] into, int offset, int length);
    }

    private final Reader reader;
    boolean closed;

    FakeLine(Reader reader) {
        this.reader = reader;
    }

    TargetDataLine line() {
        return (TargetDataLine) Proxy.newProxyInstance(getClass().getClassLoader(), new Class<?>[] {TargetDataLine.class},
            (proxy, method, arguments) -> switch (method.getName()) {
                case "read" -> reader.read((byte[]) arguments[0], (int) arguments[1], (int) arguments[2]);
                case "close" -> {
                    closed = true;
                    yield null;
                }
                default -> throw new InvocationTargetException(null, "a source must not call " + method.getName());
            });
    }
}
