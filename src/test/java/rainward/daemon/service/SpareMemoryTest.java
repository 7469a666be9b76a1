package rainward.daemon.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.HotSpotDiagnosticMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The virtual machine that runs the tests takes the wishes and gives memory back. */
class SpareMemoryTest {

    private static final List<String> OPTIONS = List.of("MaxHeapFreeRatio", "MinHeapFreeRatio");

    private final HotSpotDiagnosticMXBean machine =
            ManagementFactory.getPlatformMXBean(HotSpotDiagnosticMXBean.class);
    private final List<String> usual = new ArrayList<>();

    @BeforeEach
    void remember() {
        OPTIONS.forEach(option -> usual.add(machine.getVMOption(option).getValue()));
    }

    @AfterEach
    void putBack() {
        for (int i = 0; i < OPTIONS.size(); i++) {
            machine.setVMOption(OPTIONS.get(i), usual.get(i));
        }
    }

    @Test
    void littleIsKeptInHandAndTheRestIsGivenBack() {
        SpareMemory.keepLittle();
        assertThat(machine.getVMOption("MinHeapFreeRatio").getValue()).isEqualTo("10");
        assertThat(machine.getVMOption("MaxHeapFreeRatio").getValue()).isEqualTo("20");

        long full = committedBytesWhileFull();
        SpareMemory.giveBack();

        assertThat(committedBytes()).isLessThan(full - 200_000_000);
    }

    private static long committedBytesWhileFull() {
        List<byte[]> round = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            round.add(new byte[1_000_000]);
        }
        return Math.max(committedBytes(), round.size());
    }

    private static long committedBytes() {
        return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getCommitted();
    }
}
