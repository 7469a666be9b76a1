package rainward.weather.sky;

import java.time.Duration;
import java.time.Instant;
import rainward.farm.GeoPoint;
import rainward.farm.Require;
import rainward.weather.sky.ReferenceEvapotranspiration.Air;

/**
 * Sun and evaporation demand by the hour.
 *
 * @param radiationMjPerM2 global radiation on the flat in each hour [MJ/m2]
 * @param referenceEvapotranspirationMm ASCE 2005 short reference in each hour, not below zero [mm]
 */
public record EvaporationDemand(double[] radiationMjPerM2, double[] referenceEvapotranspirationMm) {

    public EvaporationDemand {
        Require.that(
                radiationMjPerM2.length == referenceEvapotranspirationMm.length,
                "radiation and evapotranspiration differ in hours");
    }

    /**
     * Demand from air and sky cover: clear-sky radiation of FAO-56 eq. 37 let through cloud by
     * Kasten and Czeplak 1980, then hourly ASCE-EWRI 2005. The same ratio of radiation to clear sky
     * gives the cloudiness of the longwave loss, so that nights need no value carried over from
     * sunset. Dew (demand below zero) is set to zero.
     *
     * @param air hourly air, wind and sky
     * @param place on the ground
     * @param elevationM above the sea, for pressure and clear sky [m]
     * @return demand of each hour of {@code air}
     */
    public static EvaporationDemand of(HourlyAir air, GeoPoint place, double elevationM) {
        Require.inRange("elevationM", elevationM, -430, 6000);
        double pressureKpa = AirPhysics.pressureKpa(elevationM);
        double[] radiation = new double[air.hours()];
        double[] demand = new double[air.hours()];
        for (int h = 0; h < air.hours(); h++) {
            Instant start = air.start().plus(Duration.ofHours(h));
            double top = SolarGeometry.extraterrestrialHourMjPerM2(start, place);
            double through = SkyRadiation.throughCloudFraction(air.skyCoverFraction()[h]);
            radiation[h] = through * SkyRadiation.clearSkyMjPerM2(top, elevationM);
            demand[h] = Math.max(0, hourMm(airOf(air, h, pressureKpa), radiation[h], through));
        }
        return new EvaporationDemand(radiation, demand);
    }

    private static Air airOf(HourlyAir air, int h, double pressureKpa) {
        double saturation = AirPhysics.saturationKpa(air.airTempC()[h]);
        double vapour = Math.min(saturation, AirPhysics.saturationKpa(air.dewPointC()[h]));
        return new Air(air.airTempC()[h], saturation, vapour, air.windMps()[h], pressureKpa);
    }

    private static double hourMm(Air air, double radiationMjPerM2, double clearnessFraction) {
        double cloud = NetRadiation.cloudFunction(clearnessFraction);
        double net = NetRadiation.shortwaveMjPerM2(radiationMjPerM2)
                - NetRadiation.longwaveHourMjPerM2(air.airTempC(), air.vapourKpa(), cloud);
        return ReferenceEvapotranspiration.hourMm(air, net);
    }
}
