package rainward.daemon.service;

import io.javalin.Javalin;
import java.nio.file.Path;
import okhttp3.OkHttpClient;
import org.quartz.impl.StdSchedulerFactory;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rainward.store.Store;

/**
 * A start spends its time on reading classes, one after the other, and a PC has a second core: it
 * reads those of the libraries that come last while settings and database are opened.
 */
public final class HeadStart {

    private static final Logger LOG = LoggerFactory.getLogger(HeadStart.class);

    private HeadStart() {}

    /** Begins, and returns at once; what is made is made only to have its classes read. */
    public static void begin(Path home) {
        Thread reader = new Thread(() -> read(home), "head start");
        reader.setDaemon(true);
        reader.start();
    }

    private static void read(Path home) {
        try {
            Store.loadEngine(home);
            Javalin.create();
            new OkHttpClient();
            new StdSchedulerFactory();
        } catch (RuntimeException | LinkageError e) {
            // The start itself meets the same, and tells it where it matters.
            LOG.debug("no head start: {}", e.toString());
        }
    }
}
