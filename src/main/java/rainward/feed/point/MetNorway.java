package rainward.feed.point;

import okhttp3.HttpUrl;

import rainward.farm.GeoPoint;
import rainward.feed.hourly.ReadForecast;
import rainward.feed.terms.Addresses;
import rainward.feed.terms.Service;
import rainward.feed.wire.Ask;
import rainward.feed.wire.PoliteClient;

/**
 * MET Norway Locationforecast 2.0: the whole world, free with attribution, no chance of rain
 * outside the Nordic countries.
 */
public final class MetNorway extends PlainSource {

    public MetNorway(PoliteClient client) {
        super(client, Service.MET_NORWAY);
    }

    @Override
    Ask ask(GeoPoint shared) {
        HttpUrl url = Addresses.under(
                        client().settings().address(Service.MET_NORWAY),
                        "weatherapi/locationforecast/2.0/complete")
                .addQueryParameter("lat", Addresses.degrees(shared.latitudeDeg(), 4))
                .addQueryParameter("lon", Addresses.degrees(shared.longitudeDeg(), 4))
                .build();
        return Ask.get(Service.MET_NORWAY, url, "application/json");
    }

    @Override
    PoliteClient.Reader<ReadForecast> reader() {
        return MetForecast::read;
    }
}
