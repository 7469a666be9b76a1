package rainward.daemon.office;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.encoder.PatternLayoutEncoder;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.rolling.RollingFileAppender;
import ch.qos.logback.core.rolling.SizeAndTimeBasedRollingPolicy;
import ch.qos.logback.core.util.FileSize;
import java.nio.file.Path;
import org.slf4j.LoggerFactory;
import rainward.store.OwnFile;

/**
 * Where log lines go: commands show warnings only, the service writes a file a day and throws old
 * ones away.
 */
public final class Logs {

    /**
     * Line breaks, of a trace too, and codes that steer a screen are shown as a mark, so that
     * nobody who is quoted in a message can forge a line.
     */
    private static final String LINE =
            "%d{yyyy-MM-dd'T'HH:mm:ss.SSSXXX} %-5level %logger{20} %replace(%msg %ex{12}){'\\p{Cntrl}+', ' | '}%nopex%n";

    private static final int DAYS_KEPT = 30;
    private static final String SIZE_OF_ALL = "100MB";
    private static final String SIZE_OF_ONE = "10MB";

    private Logs() {}

    /** Adds the file of the day. */
    public static void toFile(Path folder) {
        LoggerContext context = (LoggerContext) LoggerFactory.getILoggerFactory();
        RollingFileAppender<ILoggingEvent> file = new RollingFileAppender<>();
        file.setContext(context);
        file.setName("file");
        PatternLayoutEncoder encoder = new PatternLayoutEncoder();
        encoder.setContext(context);
        encoder.setPattern(LINE);
        encoder.start();
        file.setEncoder(encoder);
        SizeAndTimeBasedRollingPolicy<ILoggingEvent> rolling =
                new SizeAndTimeBasedRollingPolicy<>();
        rolling.setContext(context);
        rolling.setParent(file);
        rolling.setFileNamePattern(
                OwnFile.folder(folder).resolve("rainward-%d{yyyy-MM-dd}.%i.log").toString());
        rolling.setMaxFileSize(FileSize.valueOf(SIZE_OF_ONE));
        rolling.setMaxHistory(DAYS_KEPT);
        rolling.setTotalSizeCap(FileSize.valueOf(SIZE_OF_ALL));
        rolling.start();
        file.setRollingPolicy(rolling);
        file.start();
        Logger root = context.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
        root.addAppender(file);
        context.getLogger("rainward").setLevel(Level.INFO);
    }
}
