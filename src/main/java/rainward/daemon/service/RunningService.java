package rainward.daemon.service;

import java.sql.SQLException;
import java.time.Duration;
import org.quartz.SchedulerException;
import rainward.daemon.keep.NightDesk;
import rainward.daemon.keep.TroubleDesk;
import rainward.daemon.office.GroundDesk;
import rainward.daemon.office.Office;
import rainward.daemon.office.PostDesk;
import rainward.daemon.office.Refusal;
import rainward.daemon.office.WeatherDesk;
import rainward.daemon.schedule.Job;
import rainward.daemon.schedule.Schedule;

/** The schedule of a data folder, at work until it is closed. */
public final class RunningService implements AutoCloseable {

    private static final Duration POST_EVERY = Duration.ofMinutes(1);

    private static final String POST = "post";

    /** A slow mail server may hold one turn of the post for some minutes. */
    private static final int LOOKS_WITHOUT = 20;

    private static final Duration LOOK_AT_ITSELF_EVERY = Duration.ofMinutes(10);

    /** A night whose work was missed or failed is made up for so soon. */
    private static final Duration NIGHT_LOOK_EVERY = Duration.ofMinutes(30);

    /** World grid: about five questions a minute; a crew of forty fields is through in a day. */
    private static final Duration SURVEY_EVERY = Duration.ofHours(2);

    private static final int FIELDS_AT_ONCE = 4;

    private final Schedule schedule;
    private final Rounds rounds;
    private final PostDesk post;

    private final Watchdog watchdog;

    private RunningService(Schedule schedule, Rounds rounds, PostDesk post, Watchdog watchdog) {
        this.schedule = schedule;
        this.rounds = rounds;
        this.post = post;
        this.watchdog = watchdog;
    }

    /** Puts every job into the schedule and starts it. */
    public static RunningService start(Office office) {
        PostDesk post = new PostDesk(office);
        Rounds rounds = new Rounds(office, new WeatherDesk(office), post);
        office.store().inTransaction(books -> books.outbox().freeHeld(office.now()));
        try {
            Schedule schedule = Schedule.open(office.home().schedule());
            schedule.put(
                    new Job.Steady("pull", office.settings().weather().pace().pullEvery()), () -> {
                        rounds.turn();
                        rounds.send();
                        SpareMemory.giveBack();
                    });
            schedule.put(
                    new Job.Daily("brief", office.settings().mail().briefAt(), office.zone()),
                    rounds::brief);
            Watchdog watchdog = Watchdog.start(POST_EVERY, LOOKS_WITHOUT, Watchdog::endProcess);
            schedule.put(
                    new Job.Steady("look at itself", LOOK_AT_ITSELF_EVERY),
                    new TroubleDesk(office, post)::look);
            schedule.put(new Job.Steady(POST, POST_EVERY), () -> {
                watchdog.alive();
                rounds.briefIfMissed();
                rounds.send();
            });
            schedule.put(
                    new Job.Steady("night work", NIGHT_LOOK_EVERY),
                    new NightDesk(office)::workIfDue);
            if (office.settings().soil().askSurvey()) {
                GroundDesk ground = new GroundDesk(office);
                schedule.put(
                        new Job.Steady("soil survey", SURVEY_EVERY),
                        () -> ground.ask(FIELDS_AT_ONCE));
            }
            SpareMemory.keepLittle();
            rounds.startsNow();
            schedule.start();
            // A process that died in the middle of a turn left its work for this one.
            schedule.runNow(POST);
            return new RunningService(schedule, rounds, post, watchdog);
        } catch (SchedulerException | SQLException e) {
            throw Refusal.badWorld("The schedule in " + office.home().schedule()
                    + " cannot be opened (" + e.getMessage()
                    + "): move that file away and start again; it is made anew.");
        }
    }

    public Rounds rounds() {
        return rounds;
    }

    public PostDesk post() {
        return post;
    }

    @Override
    public void close() {
        watchdog.close();
        schedule.close();
    }
}
