package rainward.board;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;

import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.zip.CRC32;

/** Style, script and sign of the board: three files that come with the program, and no others. */
final class Assets {

    private static final Map<String, String> TYPES = Map.of(
            "board.css", "text/css; charset=utf-8",
            "board.js", "text/javascript; charset=utf-8",
            "board.svg", "image/svg+xml");

    private Assets() {}

    static void routes(RoutesConfig routes) {
        TYPES.forEach((file, type) -> {
            byte[] bytes = read(file);
            String tag = tag(bytes);
            routes.get("/" + file, ctx -> serve(ctx, new Asset(bytes, type, tag)));
        });
    }

    private record Asset(byte[] bytes, String type, String tag) {}

    /** Kept by the browser, asked for each time: a new program shows its own style at once. */
    private static void serve(Context ctx, Asset asset) {
        ctx.header("Cache-Control", "no-cache").header("ETag", asset.tag());
        if (asset.tag().equals(ctx.header("If-None-Match"))) {
            ctx.status(HttpStatus.NOT_MODIFIED);
        } else {
            ctx.contentType(asset.type()).result(asset.bytes());
        }
    }

    private static String tag(byte[] bytes) {
        CRC32 sum = new CRC32();
        sum.update(bytes);
        return '"' + Long.toHexString(sum.getValue()) + '"';
    }

    private static byte[] read(String file) {
        try (InputStream in = Assets.class.getResourceAsStream("/board/" + file)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its own file " + file);
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new IllegalStateException("cannot read " + file, e);
        }
    }
}
