package rainward.queue.model;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleToIntFunction;
import rainward.farm.Crew;
import rainward.farm.GeoPoint;
import rainward.queue.pace.Roads;
import rainward.queue.shop.Shop;

/** Places by index: where fields are reached and where machines stand. */
final class Sites {

    private final Map<GeoPoint, Integer> index = new LinkedHashMap<>();

    /** Index of a place; a new place gets the next one. */
    int of(GeoPoint place) {
        return index.computeIfAbsent(place, p -> index.size());
    }

    /** Times between all places known so far. */
    Shop.Ways ways(Crew crew) {
        List<GeoPoint> places = List.copyOf(index.keySet());
        int n = places.size();
        double[] km = new double[n * n];
        for (int a = 0; a < n; a++) {
            for (int b = 0; b < a; b++) {
                km[a * n + b] = places.get(a).distanceKm(places.get(b)) * crew.roadFactor();
                km[b * n + a] = km[a * n + b];
            }
        }
        int[][] road = crew.machines().stream()
                .map(m -> table(km, n, d -> Roads.minutes(m, d)))
                .toArray(int[][]::new);
        return new Shop.Ways(n, road, table(km, n, Roads::carMinutes));
    }

    private static int[] table(double[] roadKm, int n, DoubleToIntFunction minutes) {
        int[] all = new int[n * n];
        for (int way = 0; way < all.length; way++) {
            boolean stays = way / n == way % n;
            all[way] = stays ? 0 : minutes.applyAsInt(roadKm[way]);
        }
        return all;
    }
}
