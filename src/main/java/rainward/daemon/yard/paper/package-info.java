/**
 * Papers and files to hand on: the printed load sheet, the landowner's report, tables, maps.
 *
 * <p>In come sheets and years of fields; out come bytes of PDF, CSV (RFC 4180) and GeoJSON (RFC
 * 7946).
 */
@NullMarked
package rainward.daemon.yard.paper;

import org.jspecify.annotations.NullMarked;
