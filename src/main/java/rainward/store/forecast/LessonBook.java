package rainward.store.forecast;

import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import rainward.store.row.Columns;
import rainward.store.row.Json;
import rainward.weather.skill.Recalibration;

/** What past forecasts taught at each property, and since when. */
public final class LessonBook {

    private final Handle handle;

    public LessonBook(Handle handle) {
        this.handle = handle;
    }

    /**
     * A lesson.
     *
     * @param learnedAt since when it is used
     * @param taught what it says
     */
    public record Lesson(Instant learnedAt, Recalibration taught) {}

    /** Writes a lesson down. */
    public void add(String property, Lesson lesson) {
        handle.createUpdate("""
                        insert into lesson (property, learned_at, lesson)
                        values (:property, :at, :lesson)
                        """)
                .bind("property", property)
                .bind("at", lesson.learnedAt().toEpochMilli())
                .bind("lesson", Json.write(lesson.taught()))
                .execute();
    }

    /** The lesson that a plan of a moment was made with, if there was one. */
    public Optional<Lesson> inForce(String property, Instant moment) {
        return handle.createQuery("""
                        select * from lesson where property = :property and learned_at <= :moment
                        order by learned_at desc, id desc limit 1
                        """)
                .bind("property", property)
                .bind("moment", moment.toEpochMilli())
                .map((row, context) -> new Lesson(
                        Columns.instant(row, "learned_at"),
                        Json.read(row.getString("lesson"), Recalibration.class)))
                .findOne();
    }
}
