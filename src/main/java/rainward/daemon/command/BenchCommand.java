package rainward.daemon.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rainward.daemon.office.Refusal;

/** Measures the program on this machine. */
@Command(
        name = "bench",
        description = "Measure the program on this machine, with nothing else running.",
        subcommands = {
            BenchPlanner.class,
            BenchStability.class,
            BenchPhysics.class,
            BenchTraces.class,
            BenchCycle.class,
            BenchCommand.Service.class
        })
public final class BenchCommand implements Runnable {

    @Spec
    CommandSpec spec = CommandSpec.create();

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }

    /** The service as a process of its own. */
    @Command(
            name = "service",
            description = {
                "Start the service as a process of its own, time it until it is ready and read",
                "its memory when idle; then time `order` from a cold start. Medians of --runs.",
                "",
                "Name a data folder of your own that no service is using; its fields, forecast and",
                "settings are what is measured."
            })
    public static final class Service implements Callable<Integer> {

        private static final long IDLE_S = 20;

        @Option(names = "--runs", paramLabel = "N", description = "How often; else 3.")
        int runs = 3;

        @Mixin
        Place place = new Place();

        @Option(names = "--json", description = "Print JSON.")
        boolean json;

        @Spec
        CommandSpec spec = CommandSpec.create();

        /** The figures, as JSON shows them. */
        record Answer(double startMs, double idleRssMb, double orderMs) {}

        @Override
        public Integer call() throws IOException, InterruptedException {
            if (runs < 1) {
                throw Refusal.badInput("--runs is " + runs + ", must be 1 or more.");
            }
            double[] startMs = new double[runs];
            double[] rssMb = new double[runs];
            double[] orderMs = new double[runs];
            for (int run = 0; run < runs; run++) {
                Answer one = once();
                startMs[run] = one.startMs();
                rssMb[run] = one.idleRssMb();
                orderMs[run] = one.orderMs();
            }
            Answer answer = new Answer(median(startMs), median(rssMb), median(orderMs));
            spec.commandLine()
                    .getOut()
                    .println(
                            json
                                    ? Sheets.json(answer)
                                    : "Ready after " + Math.round(answer.startMs()) + " ms, "
                                            + Math.round(answer.idleRssMb())
                                            + " MB when idle; order after "
                                            + Math.round(answer.orderMs()) + " ms.");
            return 0;
        }

        private Answer once() throws IOException, InterruptedException {
            long start = System.nanoTime();
            Process service = start("run");
            try {
                awaitReady(service);
                double startMs = (System.nanoTime() - start) / 1e6;
                TimeUnit.SECONDS.sleep(IDLE_S);
                double rssMb = residentMb(service.pid());
                service.destroy();
                service.waitFor();
                return new Answer(startMs, rssMb, orderMs());
            } finally {
                service.destroy();
                service.waitFor();
            }
        }

        private double orderMs() throws IOException, InterruptedException {
            long start = System.nanoTime();
            Process order = start("order");
            order.getInputStream().readAllBytes();
            if (order.waitFor() != 0) {
                throw Refusal.badInput("The order could not be made; see `rainward check`.");
            }
            return (System.nanoTime() - start) / 1e6;
        }

        private Process start(String command) throws IOException {
            return OwnProcess.start(
                    List.of(),
                    List.of(
                            command,
                            "--home",
                            place.home().path().toString(),
                            "--config",
                            place.settingsFile().toAbsolutePath().toString()));
        }

        private static void awaitReady(Process service) throws IOException {
            BufferedReader said = new BufferedReader(
                    new InputStreamReader(service.getInputStream(), StandardCharsets.UTF_8));
            StringBuilder all = new StringBuilder();
            for (String line = said.readLine(); line != null; line = said.readLine()) {
                if (line.startsWith("Ready:")) {
                    return;
                }
                all.append(line).append(System.lineSeparator());
            }
            throw Refusal.badInput(
                    "The service did not get ready: " + all.toString().strip());
        }

        private static double residentMb(long pid) throws IOException {
            Path status = Path.of("/proc", String.valueOf(pid), "status");
            if (!Files.exists(status)) {
                return Double.NaN;
            }
            try (Stream<String> lines = Files.lines(status)) {
                return lines.filter(line -> line.startsWith("VmRSS:"))
                        .mapToDouble(
                                line -> Double.parseDouble(line.replaceAll("[^0-9]", "")) / 1024)
                        .findFirst()
                        .orElse(Double.NaN);
            }
        }

        private static double median(double[] values) {
            double[] sorted = values.clone();
            Arrays.sort(sorted);
            int middle = sorted.length / 2;
            return sorted.length % 2 == 1
                    ? sorted[middle]
                    : (sorted[middle - 1] + sorted[middle]) / 2;
        }
    }
}
