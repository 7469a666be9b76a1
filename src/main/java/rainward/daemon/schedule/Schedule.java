package rainward.daemon.schedule;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Date;
import java.util.Map;
import java.util.Properties;
import java.util.TimeZone;
import java.util.concurrent.ConcurrentHashMap;
import org.quartz.CronScheduleBuilder;
import org.quartz.DisallowConcurrentExecution;
import org.quartz.JobBuilder;
import org.quartz.JobDetail;
import org.quartz.JobExecutionContext;
import org.quartz.JobKey;
import org.quartz.Scheduler;
import org.quartz.SchedulerException;
import org.quartz.SimpleScheduleBuilder;
import org.quartz.Trigger;
import org.quartz.TriggerBuilder;
import org.quartz.TriggerKey;
import org.quartz.impl.StdSchedulerFactory;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rainward.store.row.StoreException;

/**
 * Runs jobs when they are due, one run of a job at a time. Triggers outlive the process: after a
 * night without power each job that missed its turn runs once.
 */
public final class Schedule implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(Schedule.class);
    private static final String WORK = "work";

    private final Map<String, Runnable> work = new ConcurrentHashMap<>();
    private final Scheduler quartz;

    private Schedule(Scheduler quartz) {
        this.quartz = quartz;
    }

    /**
     * Opens the schedule, not yet running.
     *
     * @param file where Quartz keeps its triggers
     */
    public static Schedule open(Path file) throws SchedulerException, SQLException {
        String name = "rainward-" + Integer.toHexString(file.toAbsolutePath().hashCode());
        QuartzStore.register(name, file);
        Schedule schedule = new Schedule(new StdSchedulerFactory(properties(name)).getScheduler());
        schedule.quartz.setJobFactory((bundle, scheduler) -> new OneAtATime(schedule.work));
        return schedule;
    }

    private static Properties properties(String name) {
        Properties all = new Properties();
        all.setProperty("org.quartz.scheduler.instanceName", name);
        all.setProperty("org.quartz.scheduler.skipUpdateCheck", "true");
        // One for each job: a slow one never keeps another waiting.
        all.setProperty("org.quartz.threadPool.threadCount", "6");
        all.setProperty("org.quartz.threadPool.makeThreadsDaemons", "true");
        all.setProperty("org.quartz.scheduler.makeSchedulerThreadDaemon", "true");
        all.setProperty("org.quartz.jobStore.class", "org.quartz.impl.jdbcjobstore.JobStoreTX");
        all.setProperty(
                "org.quartz.jobStore.driverDelegateClass",
                "org.quartz.impl.jdbcjobstore.PostgreSQLDelegate");
        all.setProperty("org.quartz.jobStore.useProperties", "true");
        all.setProperty("org.quartz.jobStore.misfireThreshold", "60000");
        all.setProperty("org.quartz.jobStore.makeThreadsDaemons", "true");
        // FOR UPDATE does not exist on SQLite; one immediate transaction at a time locks as well.
        all.setProperty(
                "org.quartz.jobStore.lockHandler.class",
                "org.quartz.impl.jdbcjobstore.SimpleSemaphore");
        all.setProperty("org.quartz.jobStore.dataSource", name);
        return all;
    }

    /**
     * Sets a job; a job of that name with another time table is replaced, an equal one keeps its
     * missed turn.
     */
    public void put(Job job, Runnable what) throws SchedulerException {
        work.put(job.name(), what);
        JobDetail detail = JobBuilder.newJob(OneAtATime.class)
                .withIdentity(JobKey.jobKey(job.name()))
                .usingJobData(WORK, job.name())
                .storeDurably()
                .build();
        quartz.addJob(detail, true);
        Trigger wanted = triggerOf(job);
        Trigger kept = quartz.getTrigger(wanted.getKey());
        if (kept == null) {
            quartz.scheduleJob(wanted);
        } else if (!wanted.getDescription().equals(kept.getDescription())) {
            quartz.rescheduleJob(wanted.getKey(), wanted);
        }
    }

    private static Trigger triggerOf(Job job) {
        TriggerBuilder<Trigger> trigger = TriggerBuilder.newTrigger()
                .withIdentity(TriggerKey.triggerKey(job.name()))
                .forJob(JobKey.jobKey(job.name()))
                .withDescription(job.toString());
        if (job instanceof Job.Daily daily) {
            return trigger.withSchedule(CronScheduleBuilder.dailyAtHourAndMinute(
                                    daily.time().getHour(), daily.time().getMinute())
                            .inTimeZone(TimeZone.getTimeZone(daily.zone()))
                            .withMisfireHandlingInstructionFireAndProceed())
                    .build();
        }
        Job.Steady steady = (Job.Steady) job;
        return trigger.startAt(new Date())
                .withSchedule(SimpleScheduleBuilder.simpleSchedule()
                        .withIntervalInMilliseconds(steady.interval().toMillis())
                        .repeatForever()
                        .withMisfireHandlingInstructionNowWithRemainingCount())
                .build();
    }

    /** Begins to run what is due. */
    public void start() throws SchedulerException {
        quartz.start();
    }

    /** Runs a job now, beside its time table. */
    public void runNow(String name) throws SchedulerException {
        quartz.triggerJob(JobKey.jobKey(name));
    }

    /** Waits for what is running, then ends. */
    @Override
    public void close() {
        try {
            quartz.shutdown(true);
        } catch (SchedulerException e) {
            LOG.warn("The schedule did not end cleanly: {}", e.getMessage());
        }
    }

    /** One run of a job; Quartz never starts a second one beside it. */
    @DisallowConcurrentExecution
    public static final class OneAtATime implements org.quartz.Job {

        private final Map<String, Runnable> work;

        OneAtATime(Map<String, Runnable> work) {
            this.work = work;
        }

        @Override
        public void execute(JobExecutionContext context) {
            String name = context.getJobDetail().getKey().getName();
            try {
                work.getOrDefault(name, () -> LOG.warn("No work for job {}, left out.", name))
                        .run();
            } catch (StoreException e) {
                LOG.error(
                        "Job {} failed; it is tried again at its next turn: {}",
                        name,
                        e.getMessage());
            } catch (RuntimeException e) {
                // A job that fails must not take its trigger with it; the next turn tries again.
                LOG.error("Job {} failed; it is tried again at its next turn.", name, e);
            }
        }
    }
}
