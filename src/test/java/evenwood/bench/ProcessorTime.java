package evenwood.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.Collection;
import java.util.List;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.infra.IterationParams;
import org.openjdk.jmh.profile.InternalProfiler;
import org.openjdk.jmh.results.AggregationPolicy;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.ScalarResult;

/** Processor time of a call beside the time on the clock: on a busy machine the clock also counts what others do. */
public final class ProcessorTime implements InternalProfiler {
    static final String LABEL = "processor";

    private final OperatingSystemMXBean system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    private long startNanoseconds;

    @Override
    public String getDescription() {
        return "processor time of the whole process, per call";
    }

    @Override
    public void beforeIteration(BenchmarkParams benchmark, IterationParams iteration) {
        startNanoseconds = system.getProcessCpuTime();
    }

    @Override
    public Collection<? extends Result> afterIteration(BenchmarkParams benchmark, IterationParams iteration, IterationResult result) {
        double perCall = (double) (system.getProcessCpuTime() - startNanoseconds) / result.getMetadata().getAllOps();
        return List.of(new ScalarResult(LABEL, perCall, "ns/op", AggregationPolicy.AVG));
    }
}
