package rainward.daemon.skill;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rainward.weather.skill.LeadSkill;
import rainward.weather.skill.ReliabilityTable;

/** The sheet as text. */
public final class SkillText {

    private static final String NOTHING = "No forecast can be held against observed rain yet: it"
            + " takes a pull, and rain seen by the hour, as [weather] observed"
            + " = \"stage4\" brings it. A gauge or a day's total alone does not tell which chance came"
            + " true.";

    private SkillText() {}

    public static String of(SkillSheet sheet) {
        List<String> lines = new ArrayList<>();
        if (sheet.farm().isEmpty()) {
            lines.add(NOTHING);
        } else {
            lines.add("Chance of rain against what fell, all properties");
            leads(sheet.farm(), lines);
            for (SkillSheet.AtProperty here : sheet.properties()) {
                lines.add("");
                lines.add(here.property()
                        + here.learnedAt()
                                .map(at -> ", corrected since " + at.toLocalDate())
                                .orElse(", chances used as forecast"));
                leads(here.leads(), lines);
                here.leads().forEach(lead -> lines.add(lesson(lead)));
            }
        }
        lines.add("");
        stands(sheet.stands(), lines);
        return String.join(System.lineSeparator(), lines);
    }

    private static void leads(List<LeadSkill> leads, List<String> lines) {
        lines.add(row("ahead", "cases", "Brier", "usual", "skill"));
        for (LeadSkill lead : leads) {
            lines.add(row(
                    lead.lead().words(),
                    String.valueOf(lead.score().cases()),
                    number(lead.score().brierScore()),
                    number(lead.usualBrierScore()),
                    number(lead.skill())));
        }
    }

    private static String lesson(LeadSkill lead) {
        LeadSkill.Lesson lesson = lead.recalibration();
        return "  " + lead.lead().words() + ": "
                + lesson.effect()
                        .map(effect -> "a correction learnt from the earlier two thirds takes the"
                                + " Brier score of the other " + effect.cases() + " from "
                                + number(effect.beforeBrierScore()) + " to "
                                + number(effect.afterBrierScore()))
                        .orElseGet(() -> "no correction before " + lesson.leastCases()
                                + " cases; there are " + lead.score().cases());
    }

    private static void stands(SkillSheet.Stands stands, List<String> lines) {
        if (stands.checks() == 0) {
            lines.add("No stand check of a field whose chance at seeding is known.");
            return;
        }
        lines.add("Our chance of a stand against " + stands.checks() + " stand checks");
        lines.add(row("chance", "checks", "said", "came up", "90%"));
        for (ReliabilityTable.Row r : stands.reliability().rows()) {
            lines.add(row(
                    tenth(r),
                    String.valueOf(r.cases()),
                    number(r.forecastProbability()),
                    number(r.seenFraction()),
                    number(r.lowFraction()) + "-" + number(r.highFraction())));
        }
    }

    private static String tenth(ReliabilityTable.Row row) {
        int from = Math.min(9, (int) (row.forecastProbability() * 10 + 1e-9)) * 10;
        return from + " to " + (from + 10) + "%";
    }

    private static String row(String name, String... cells) {
        StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "  %-17s", name));
        for (String cell : cells) {
            line.append(String.format(Locale.ROOT, "%12s", cell));
        }
        return line.toString();
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.3f", value);
    }
}
