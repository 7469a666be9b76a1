package rainward.daemon.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;
import rainward.store.row.StoreException;

class ScheduleIT {

    @TempDir
    Path folder;

    Path file;
    final AtomicInteger runs = new AtomicInteger();

    @BeforeEach
    void nameTheFile() {
        file = folder.resolve("schedule.db");
    }

    @Test
    void aSteadyJobRunsAgainAndAgain() throws Exception {
        try (Schedule schedule = Schedule.open(file)) {
            schedule.put(new Job.Steady("pull", Duration.ofMillis(200)), runs::incrementAndGet);
            schedule.start();
            await().atMost(Duration.ofSeconds(20)).until(() -> runs.get() >= 3);
        }
    }

    @Test
    void aJobThatFailsIsTriedAgainAtItsNextTurn() throws Exception {
        try (Schedule schedule = Schedule.open(file)) {
            schedule.put(new Job.Steady("pull", Duration.ofMillis(200)), () -> {
                runs.incrementAndGet();
                throw new IllegalStateException("the feed broke");
            });
            schedule.start();
            await().atMost(Duration.ofSeconds(20)).until(() -> runs.get() >= 2);
        }
    }

    /** The database that is away is a bad world: told in a sentence, tried again. */
    @Test
    void aJobWhoseDatabaseIsAwayIsToldWithoutATrace() throws Exception {
        ListAppender<ILoggingEvent> told = new ListAppender<>();
        told.start();
        Logger log = (Logger) LoggerFactory.getLogger(Schedule.class);
        log.addAppender(told);
        try (Schedule schedule = Schedule.open(file)) {
            schedule.put(new Job.Steady("pull", Duration.ofMillis(200)), () -> {
                runs.incrementAndGet();
                throw new StoreException("the database server does not answer.");
            });
            schedule.start();
            await().atMost(Duration.ofSeconds(20)).until(() -> runs.get() >= 2);
        } finally {
            log.detachAppender(told);
        }
        assertThat(told.list)
                .isNotEmpty()
                .allSatisfy(event -> assertThat(event.getThrowableProxy()).isNull());
    }

    @Test
    void aBriefMissedWhileThePcWasOffRunsOnceOnReturn() throws Exception {
        Job.Daily brief = new Job.Daily("brief", LocalTime.of(5, 0), ZoneOffset.UTC);
        try (Schedule before = Schedule.open(file)) {
            before.put(brief, runs::incrementAndGet);
        }
        thePcWasOffForThreeDays();
        try (Schedule after = Schedule.open(file)) {
            after.put(brief, runs::incrementAndGet);
            after.start();
            await().atMost(Duration.ofSeconds(20)).until(() -> runs.get() >= 1);
            await().during(Duration.ofSeconds(2))
                    .atMost(Duration.ofSeconds(5))
                    .until(() -> runs.get() == 1);
        }
    }

    @Test
    void anotherTimeReplacesTheOldTrigger() throws Exception {
        try (Schedule first = Schedule.open(file)) {
            first.put(
                    new Job.Daily("brief", LocalTime.of(5, 0), ZoneOffset.UTC),
                    runs::incrementAndGet);
        }
        try (Schedule second = Schedule.open(file)) {
            second.put(
                    new Job.Daily("brief", LocalTime.of(4, 0), ZoneOffset.UTC),
                    runs::incrementAndGet);
        }
        assertThat(query("select cron_expression from qrtz_cron_triggers")).contains("0 4 ");
    }

    @Test
    void anotherZoneReplacesTheOldTrigger() throws Exception {
        for (String zone : new String[] {"America/Detroit", "America/Chicago"}) {
            try (Schedule schedule = Schedule.open(file)) {
                schedule.put(
                        new Job.Daily("brief", LocalTime.of(5, 0), ZoneId.of(zone)),
                        runs::incrementAndGet);
            }
        }
        assertThat(query("select time_zone_id from qrtz_cron_triggers"))
                .isEqualTo("America/Chicago");
    }

    @Test
    void aJobNeverRunsBesideItself() throws Exception {
        AtomicInteger at = new AtomicInteger();
        AtomicInteger most = new AtomicInteger();
        try (Schedule schedule = Schedule.open(file)) {
            schedule.put(new Job.Steady("pull", Duration.ofMillis(50)), () -> {
                most.accumulateAndGet(at.incrementAndGet(), Math::max);
                try {
                    Thread.sleep(300);
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
                at.decrementAndGet();
                runs.incrementAndGet();
            });
            schedule.start();
            schedule.runNow("pull");
            await().atMost(Duration.ofSeconds(20)).until(() -> runs.get() >= 3);
        }
        assertThat(most).hasValue(1);
    }

    private void thePcWasOffForThreeDays() throws Exception {
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                var statement = connection.createStatement()) {
            long missed = System.currentTimeMillis() - Duration.ofDays(3).toMillis();
            assertThat(statement.executeUpdate(
                            "update qrtz_triggers set next_fire_time = " + missed))
                    .isEqualTo(1);
        }
    }

    private String query(String sql) throws Exception {
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                var rows = connection.createStatement().executeQuery(sql)) {
            rows.next();
            return rows.getString(1);
        }
    }
}
