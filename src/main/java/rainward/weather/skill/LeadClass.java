package rainward.weather.skill;

import java.util.List;

/** How far ahead a forecast looks; skill is judged class by class. */
public enum LeadClass {
    FIRST_DAY,
    SECOND_DAY,
    THIRD_AND_FOURTH_DAY,
    LATER;

    /** The class of a lead time [h]. */
    public static LeadClass of(double leadHours) {
        if (leadHours < 24) {
            return FIRST_DAY;
        }
        if (leadHours < 48) {
            return SECOND_DAY;
        }
        return leadHours < 96 ? THIRD_AND_FOURTH_DAY : LATER;
    }

    /** Cases of this class. */
    public List<ForecastCase> of(List<ForecastCase> cases) {
        return cases.stream().filter(c -> of(c.leadHours()) == this).toList();
    }
}
