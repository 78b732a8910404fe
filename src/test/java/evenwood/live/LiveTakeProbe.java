package evenwood.live;

import com.sun.management.ThreadMXBean;
import evenwood.sound.AudioBlock;
import evenwood.sound.LineOpener;
import evenwood.sound.LiveInputs;
import evenwood.sound.LiveSource;
import java.io.BufferedOutputStream;
import java.io.BufferedReader;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.locks.LockSupport;

/**
 * A child program for the live tests: listens to the first input, writes every sample to a file, and tells on its
 * output what the take says of itself. Ends when its input does, or on a line "stop".
 */
public final class LiveTakeProbe {
    private LiveTakeProbe() { }

    public static void main(String[] args) throws IOException, InterruptedException {
        LineOpener opener = LiveInputs.opener(LiveInputs.choose(null), Integer.parseInt(args[1]));
        LiveSource source = opener.get();
        System.out.println("FORMAT " + source.format());
        Thread stopper = new Thread(LiveTakeProbe::waitForStop);
        stopper.setDaemon(true);
        stopper.start();
        try (DataOutputStream out = new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(Path.of(args[0])), 1 << 20))) {
            LiveTake take = LiveTake.start(source, opener, block -> write(out, block));
            String last = "";
            while (stopper.isAlive()) {
                last = tell(take.state(), last);
                LockSupport.parkNanos(10_000_000);
            }
            long captureBytes = captureAllocated();
            take.stop();
            tell(take.state(), last);
            System.out.println("END heard=" + take.state().heardFrames() + " lost=" + take.state().lostFrames()
                + " gaps=" + take.state().gaps().size() + " captureAllocated=" + captureBytes);
        }
    }

    private static String tell(LiveState state, String last) {
        String now = state.phase() + " " + state.message();
        if (!now.equals(last)) {
            System.out.println("STATE " + now);
        }
        return now;
    }

    private static void write(DataOutputStream out, AudioBlock block) {
        try {
            for (int i = 0; i < block.frames(); i++) {
                out.writeFloat(block.sample(i));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void waitForStop() {
        try {
            new BufferedReader(new InputStreamReader(System.in)).readLine();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static long captureAllocated() {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        for (Thread thread : Thread.getAllStackTraces().keySet()) {
            if (thread.getName().equals("evenwood-capture")) {
                return threads.getThreadAllocatedBytes(thread.getId());
            }
        }
        return -1;
    }
}
