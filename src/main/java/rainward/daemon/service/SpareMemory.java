package rainward.daemon.service;

import com.sun.management.HotSpotDiagnosticMXBean;
import java.lang.management.ManagementFactory;
import java.util.List;
import javax.management.JMException;
import javax.management.ObjectName;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Memory that a round filled and nobody uses any more: some hundred megabytes, for a second an
 * hour. Left alone the collector keeps them from the office PC until it needs room itself. A plain
 * {@code java -jar} has no say in the options of its virtual machine; some of them can be changed
 * while it runs.
 */
public final class SpareMemory {

    private static final Logger LOG = LoggerFactory.getLogger(SpareMemory.class);

    /** Share of the heap that stays empty after a full collection; usual are 40 and 70 %. */
    private static final List<Ratio> LITTLE =
            List.of(new Ratio("MinHeapFreeRatio", "10"), new Ratio("MaxHeapFreeRatio", "20"));

    private SpareMemory() {}

    private record Ratio(String option, String percent) {}

    /** From now on a full collection leaves little memory in hand. */
    public static void keepLittle() {
        HotSpotDiagnosticMXBean machine =
                ManagementFactory.getPlatformMXBean(HotSpotDiagnosticMXBean.class);
        if (machine == null) {
            return;
        }
        for (Ratio ratio : LITTLE) {
            try {
                machine.setVMOption(ratio.option(), ratio.percent());
            } catch (IllegalArgumentException e) {
                LOG.debug("{} stays as it is: {}", ratio.option(), e.getMessage());
            }
        }
    }

    /** Gives it back to the machine: that of the heap, and that of the C library below it. */
    public static void giveBack() {
        System.gc();
        try {
            ManagementFactory.getPlatformMBeanServer()
                    .invoke(
                            new ObjectName("com.sun.management:type=DiagnosticCommand"),
                            "systemTrimNativeHeap",
                            new Object[0],
                            new String[0]);
        } catch (JMException | RuntimeException e) {
            // Known to JDK 17.0.9 and newer on Linux with glibc; elsewhere there is nothing to do.
            LOG.debug("the C library keeps what it has: {}", e.getMessage());
        }
    }
}
