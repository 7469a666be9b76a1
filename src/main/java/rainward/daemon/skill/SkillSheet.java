package rainward.daemon.skill;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rainward.daemon.office.Office;
import rainward.daemon.office.SkillDesk;
import rainward.weather.skill.BrierScore;
import rainward.weather.skill.ForecastCase;
import rainward.weather.skill.LeadSkill;
import rainward.weather.skill.ReliabilityTable;
import rainward.weather.skill.SeenChance;

/**
 * How good chances have been: what {@code skill --json} prints.
 *
 * @param farm all properties together, by lead time
 * @param properties each by itself
 * @param stands our own chance of a stand against what was found
 */
public record SkillSheet(List<LeadSkill> farm, List<AtProperty> properties, Stands stands) {

    /**
     * One property.
     *
     * @param property its name
     * @param learnedAt since when its chances are moved as they are; empty: not yet
     * @param leads by lead time
     */
    public record AtProperty(
            String property, Optional<OffsetDateTime> learnedAt, List<LeadSkill> leads) {}

    /**
     * Our own number.
     *
     * @param checks of stands whose chance at seeding is known
     * @param score empty without checks
     * @param reliability by tenths
     */
    public record Stands(int checks, Optional<BrierScore> score, ReliabilityTable reliability) {

        static Stands of(List<ForecastCase> cases) {
            Optional<BrierScore> score =
                    cases.isEmpty() ? Optional.empty() : Optional.of(BrierScore.of(cases));
            return new Stands(cases.size(), score, ReliabilityTable.of(cases));
        }
    }

    public static SkillSheet of(Office office) {
        SkillDesk desk = new SkillDesk(office);
        Map<String, List<SeenChance>> seen = desk.seen();
        Stream<SeenChance> all = seen.values().stream().flatMap(List::stream);
        return new SkillSheet(
                LeadSkill.of(all.toList()),
                seen.entrySet().stream()
                        .map(e -> new AtProperty(
                                e.getKey(),
                                desk.learnedAt(e.getKey()).map(at -> local(office, at)),
                                LeadSkill.of(e.getValue())))
                        .toList(),
                Stands.of(desk.stands()));
    }

    private static OffsetDateTime local(Office office, Instant at) {
        return at.atZone(office.zone()).toOffsetDateTime();
    }
}
