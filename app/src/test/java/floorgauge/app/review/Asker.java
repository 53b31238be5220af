package floorgauge.app.review;

import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;

/**
 * Asks a server on the loopback.
 *
 * @param port it listens on
 */
record Asker(int port) {

    private static final HttpClient CLIENT = HttpClient.newHttpClient();

    String origin() {
        return "http://127.0.0.1:" + port;
    }

    HttpResponse<String> get(String path, String... headers) throws IOException, InterruptedException {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(origin() + path));
        for (int i = 0; i < headers.length; i += 2) {
            request.header(headers[i], headers[i + 1]);
        }
        return CLIENT.send(request.build(), HttpResponse.BodyHandlers.ofString(StandardCharsets.ISO_8859_1));
    }

    HttpResponse<String> post(String path, String body) throws IOException, InterruptedException {
        return post(path, body, "Origin", origin(), "Content-Type", "application/json");
    }

    HttpResponse<String> post(String path, String body, String... headers) throws IOException, InterruptedException {
        HttpRequest.Builder request =
                HttpRequest.newBuilder(URI.create(origin() + path)).POST(HttpRequest.BodyPublishers.ofString(body));
        for (int i = 0; i < headers.length; i += 2) {
            request.header(headers[i], headers[i + 1]);
        }
        return CLIENT.send(request.build(), HttpResponse.BodyHandlers.ofString());
    }

    /** Sends bytes as they are; answers with the first line that comes back, blank where the server hangs up. */
    String raw(String request) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", port)) {
            socket.setSoTimeout(20_000);
            try {
                socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
                socket.getOutputStream().flush();
            } catch (IOException e) {
                return "";
            }
            byte[] answer = new byte[200];
            int read = socket.getInputStream().read(answer);
            return read < 0
                    ? ""
                    : new String(answer, 0, read, StandardCharsets.ISO_8859_1)
                            .lines()
                            .findFirst()
                            .orElse("");
        }
    }
}
