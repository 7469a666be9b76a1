package rainward.weather.skill;

import java.util.List;

/** How far ahead a forecast looks; skill is judged class by class. */
public enum LeadClass {
    FIRST_DAY(12),
    SECOND_DAY(36),
    THIRD_AND_FOURTH_DAY(72),
    LATER(144);

    private final double middleHours;

    LeadClass(double middleHours) {
        this.middleHours = middleHours;
    }

    /** The lead time that stands for the class: of several forecasts the one nearest above it. */
    public double middleHours() {
        return middleHours;
    }

    /** As a person would say it. */
    public String words() {
        return switch (this) {
            case FIRST_DAY -> "up to 1 day";
            case SECOND_DAY -> "1 to 2 days";
            case THIRD_AND_FOURTH_DAY -> "2 to 4 days";
            case LATER -> "4 days and more";
        };
    }

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
