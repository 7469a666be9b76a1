package rainward.store.round;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;
import rainward.queue.problem.Plan;
import rainward.store.row.Columns;
import rainward.store.row.Json;
import rainward.store.row.Line;

/**
 * Orders that were given out, so that the next one can say what changed. Fields are told of by the
 * names they go by now.
 */
public final class PlanLog {

    private static final String FIELD = "\"field\":";

    private final Handle handle;

    public PlanLog(Handle handle) {
        this.handle = handle;
    }

    /** Keeps an order as it was given out. */
    public void add(GivenPlan given) {
        handle.createUpdate("""
                        insert into plan_given (as_of, given_at, cause, plan)
                        values (:asOf, :at, :cause, :plan)
                        """)
                .bind("asOf", given.plan().asOf().toEpochMilli())
                .bind("at", given.givenAt().toEpochMilli())
                .bind("cause", given.cause())
                .bind("plan", Json.write(given.plan()))
                .execute();
    }

    /** The order that was given out last. */
    public Optional<GivenPlan> last() {
        return handle.createQuery("select * from plan_given order by id desc limit 1")
                .map(Line.of(given()))
                .findOne();
    }

    /** The order that was in force at a moment. */
    public Optional<GivenPlan> lastAt(Instant moment) {
        return handle.createQuery("""
                        select * from plan_given where given_at <= :moment
                        order by given_at desc, id desc limit 1
                        """)
                .bind("moment", moment.toEpochMilli())
                .map(Line.of(given()))
                .findOne();
    }

    /** Orders given out since then, the oldest first. */
    public List<GivenPlan> since(Instant moment) {
        return handle.createQuery("select * from plan_given where given_at >= :moment order by id")
                .bind("moment", moment.toEpochMilli())
                .map(Line.of(given()))
                .list();
    }

    private RowMapper<GivenPlan> given() {
        Map<String, String> called = called();
        return (row, context) -> {
            String plan = row.getString("plan");
            for (var name : called.entrySet()) {
                plan = plan.replace(FIELD + name.getKey(), FIELD + name.getValue());
            }
            return new GivenPlan(
                    Json.read(plan, Plan.class),
                    Columns.instant(row, "given_at"),
                    row.getString("cause"));
        };
    }

    /** Names that fields went by and go by now, as they stand in a plan. */
    private Map<String, String> called() {
        return handle.createQuery("select name, called from field where called is not null")
                .map((row, context) -> Map.entry(
                        Json.write(row.getString("name")), Json.write(row.getString("called"))))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }

    /**
     * An order that was given out.
     *
     * @param plan the order
     * @param givenAt when
     * @param cause what made it, for instance {@code new forecast}
     */
    public record GivenPlan(Plan plan, Instant givenAt, String cause) {}
}
