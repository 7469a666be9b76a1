package rainward.cycle.ground;

import java.time.Instant;
import rainward.farm.Operation;
import rainward.soil.FieldSoil;
import rainward.soil.SoilState;
import rainward.soil.SurfaceCondition;

/** Something that changes the top of a field or what is known of it. */
public sealed interface GroundEvent {

    /** A disk or a tiller turns over that much [cm]; common practice, no source. */
    double TILLED_DEPTH_CM = 10;

    /** Full hour. */
    Instant at();

    /** The state right after it. */
    SoilState after(SoilState before, FieldSoil soil);

    /** The surface right after it. */
    SurfaceCondition after(SurfaceCondition before);

    /**
     * A machine worked the top.
     *
     * @param at full hour
     * @param operation one that touches the top
     */
    record Worked(Instant at, Operation operation) implements GroundEvent {

        /** True where seed depth feels it. */
        public static boolean touchesTheTop(Operation operation) {
            return switch (operation) {
                case DISK, TILL, SEED, FIRM -> true;
                case MOW, SPRAY, SPREAD -> false;
            };
        }

        private boolean turnsItOver() {
            return operation == Operation.DISK || operation == Operation.TILL;
        }

        @Override
        public SoilState after(SoilState before, FieldSoil soil) {
            return turnsItOver() ? before.mixed(soil, TILLED_DEPTH_CM) : before;
        }

        @Override
        public SurfaceCondition after(SurfaceCondition before) {
            return turnsItOver() ? SurfaceCondition.TILLED : SurfaceCondition.FIRMED;
        }
    }

    /**
     * Somebody dug and looked.
     *
     * @param at full hour
     * @param word what they saw at seed depth
     */
    record Seen(Instant at, SoilState.Word word) implements GroundEvent {

        @Override
        public SoilState after(SoilState before, FieldSoil soil) {
            return before.corrected(word, soil);
        }

        @Override
        public SurfaceCondition after(SurfaceCondition before) {
            return before;
        }
    }
}
