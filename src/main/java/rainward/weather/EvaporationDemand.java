package rainward.weather;

import rainward.farm.Require;

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
}
