package rainward.daemon.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import rainward.daemon.office.Refusal;

/** This program once more, in a process of its own. */
final class OwnProcess {

    /**
     * Heap and collector of the service as it is packaged. A large heap is walked through for the
     * first time for many rounds, and each page first touched costs the system's time, not ours.
     */
    private static final List<String> AS_PACKAGED =
            List.of("-Xmx320m", "-Xms32m", "-XX:+UseSerialGC");

    private OwnProcess() {}

    /**
     * Starts it, with what it says on standard error among the rest.
     *
     * @param machine options of the virtual machine
     * @param words the command
     */
    static Process start(List<String> machine, List<String> words) throws IOException {
        List<String> all = new ArrayList<>();
        all.add(ProcessHandle.current().info().command().orElse("java"));
        all.addAll(machine);
        all.addAll(List.of("-cp", System.getProperty("java.class.path"), "rainward.daemon.Main"));
        all.addAll(words);
        return new ProcessBuilder(all).redirectErrorStream(true).start();
    }

    /**
     * What a benchmark said that measures in such a process, where it is told {@code --here}.
     *
     * @param json whether it is to print JSON
     * @param words of the command
     */
    static String measured(boolean json, List<String> words)
            throws IOException, InterruptedException {
        List<String> all = new ArrayList<>(words);
        all.add("--here");
        if (json) {
            all.add("--json");
        }
        Process process = start(AS_PACKAGED, all);
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (process.waitFor() != 0) {
            throw Refusal.badInput("It could not be measured: " + said.strip());
        }
        return said.strip();
    }
}
