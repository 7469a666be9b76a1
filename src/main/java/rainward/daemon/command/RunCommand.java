package rainward.daemon.command;

import java.io.PrintWriter;
import java.time.InstantSource;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import rainward.daemon.board.OpenBoard;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Logs;
import rainward.daemon.office.Office;
import rainward.daemon.service.HeadStart;
import rainward.daemon.service.RunningService;
import rainward.store.FolderLock;
import rainward.store.Store;

/** The service. */
@Command(
        name = "run",
        description = {
            "Run the service: pull forecasts, keep the order, mail the brief and the alerts.",
            "",
            "It runs until it is told to stop (Ctrl-C, or the system's service control). One data",
            "folder has one service; the other commands may be used beside it."
        })
public final class RunCommand implements Callable<Integer> {

    @Mixin
    Place place = new Place();

    @Spec
    CommandSpec spec = CommandSpec.create();

    /** Works at another time than the PC's. */
    public void keepTo(InstantSource clock) {
        place.keepTo(clock);
    }

    @Override
    public Integer call() throws InterruptedException {
        PrintWriter out = spec.commandLine().getOut();
        HomeFolder home = place.home().made();
        HeadStart.begin(home.path());
        CountDownLatch told = new CountDownLatch(1);
        CountDownLatch ended = new CountDownLatch(1);
        Runtime.getRuntime().addShutdownHook(new Thread(() -> stop(told, ended), "stop"));
        try (FolderLock lock = FolderLock.take(home.path());
                Office office = place.open();
                Store.Hold alone = office.store().alone()) {
            Logs.toFile(home.logs());
            try (RunningService service = RunningService.start(office);
                    OpenBoard board = OpenBoard.asSet(office, service.rounds(), service.post())) {
                out.println("Ready: " + home.path() + ", brief at "
                        + office.settings().mail().briefAt() + " " + office.zone() + ".");
                out.println(board.words());
                out.flush();
                told.await();
            }
        } finally {
            ended.countDown();
        }
        return 0;
    }

    /** The process may end only after the running work has. */
    private static void stop(CountDownLatch told, CountDownLatch ended) {
        told.countDown();
        try {
            ended.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
