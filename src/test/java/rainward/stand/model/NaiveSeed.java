package rainward.stand.model;

import rainward.farm.Species;
import rainward.farm.Species.SeedlingGrowth;
import rainward.stand.SeedPlacement;
import rainward.stand.StandCase;
import rainward.stand.StandRules;
import rainward.stand.ThermalResponse;
import rainward.stand.bed.RainErosion;
import rainward.stand.bed.SurfaceDamage;
import rainward.stand.seedling.HydrothermalTime;

/**
 * One class of seed put in at one hour on one trace, followed hour by hour with no running sums:
 * slow and plain, to hold the fast walk against.
 */
final class NaiveSeed {
    private final Species species;
    private final StandCase question;
    private final StandRules rules;
    private final SurfaceDamage damage;

    double dead;
    double waiting;
    double scorched;
    double washed;

    NaiveSeed(StandCase question, Species species, StandRules rules) {
        this.question = question;
        this.species = species;
        this.rules = rules;
        damage = new SurfaceDamage(question.conditions(), depthCm(), rules.damage());
    }

    /** Adds the fate of all classes, each by its share. */
    void sow(int hour) {
        int classes = rules.grain().seedClasses();
        for (double mpa : new HydrothermalTime(species).basePotentialsMpa(classes)) {
            follow(hour, mpa, 1.0 / classes);
        }
    }

    private void follow(int sown, double basePotentialMpa, double share) {
        int g = germination(sown, basePotentialMpa);
        int hours = question.soil().hours();
        if (g == hours) {
            double left = keptByRain(sown, hours);
            boolean soaking = progress(hours - 1, basePotentialMpa) > 0;
            waiting += soaking ? 0 : share * left;
            washed += share * (1 - left);
            return;
        }
        SeedlingGrowth growth = species.emergence();
        double upCd = (depthCm() + rules.seedling().shootStartCm()) * growth.shootCdPerCm();
        double safeCd = (rules.seedling().safeRootCm() - depthCm()) * growth.rootCdPerCm();
        double grown = 0;
        int drySpell = 0;
        int up = hours;
        for (int t = g + 1; t < hours; t++) {
            boolean wasSafe = up < hours && grown >= safeCd;
            grown += growthCd(t);
            double tipCm = depthCm() + grown / growth.rootCdPerCm();
            drySpell = question.soil().surface().dryFrontCm()[t][0] > tipCm ? drySpell + 1 : 0;
            if (drySpell >= rules.seedling().deadlyDryHours() && !wasSafe) {
                dead += share;
                return;
            }
            up = up == hours && grown >= upCd ? t : up;
        }
        if (up == hours) {
            washed += share * (1 - keptByRain(sown, hours));
            return;
        }
        double alive = keptByHeat(up);
        scorched += share * (1 - alive);
        washed += share * alive * (1 - keptByRain(sown, up + 1));
    }

    private int germination(int sown, double basePotentialMpa) {
        double progress = 0;
        for (int t = sown; t < question.soil().hours(); t++) {
            progress += progress(t, basePotentialMpa);
            if (progress >= 1) {
                return t;
            }
        }
        return question.soil().hours();
    }

    private double progress(int t, double basePotentialMpa) {
        HydrothermalTime model = new HydrothermalTime(species);
        double tempC = question.soil().seedZone().tempC()[t][0];
        double felt = potential(t) / SeedPlacement.contact(question.conditions());
        double above = felt - model.heatRiseMpa(tempC) - basePotentialMpa;
        return Math.max(0, above) * model.progressPerMpaDay(tempC) / 24;
    }

    private double potential(int t) {
        return Math.max(-3, question.soil().seedZone().potentialMpa()[t][0]);
    }

    private double growthCd(int t) {
        double tempC = question.soil().seedZone().tempC()[t][0];
        double water = Math.max(0.7, 1 + potential(t));
        return new ThermalResponse(species.cardinal()).degrees(tempC) * water / 24;
    }

    private double keptByRain(int from, int to) {
        double push = Math.min(1, Math.cbrt(species.seedsPerKg() / 300_000));
        double kept = 1;
        for (int t = from; t < to; t++) {
            double peak = question.traces().peak30MmPerH()[t][0];
            if (peak > 5) {
                double rain = question.traces().rainMm()[t][0];
                double energy = RainErosion.hourEnergyMjPerHa(rain, peak);
                double open = 1 - push * damage.sealedFraction(energy, peak);
                kept *= Math.max(1e-3, damage.stayingFraction(energy, peak) * open);
            }
        }
        return kept;
    }

    private double keptByHeat(int up) {
        double kept = 1;
        int end = Math.min(question.soil().hours(), up + 72);
        for (int t = Math.max(0, up - 6); t < end; t++) {
            double tempC = question.soil().seedZone().surfaceTempC()[t][0];
            double above = Math.max(0, tempC - species.cardinal().lethalTempC());
            double killed = above * rules.seedling().heatKillPerDegreeHour();
            kept *= Math.max(1e-3, 1 - killed);
        }
        return kept;
    }

    private double depthCm() {
        return question.soil().seedZone().depthCm();
    }
}
