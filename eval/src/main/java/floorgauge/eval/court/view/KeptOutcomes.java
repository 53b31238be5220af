package floorgauge.eval.court.view;

import floorgauge.court.calibration.CalibrationStatus;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Outcomes kept in a folder, a file a seed, so that a long run may be ended and taken up again, or shared among processes.
 * They speak of the program that made them: empty the folder when it changes.
 *
 * @param folder made where it is missing
 */
record KeptOutcomes(Path folder) {

    private static final int HEAD = 5;

    KeptOutcomes {
        Objects.requireNonNull(folder, "folder");
    }

    private Path file(long seed) {
        return folder.resolve(seed + ".txt");
    }

    /** The outcome of a seed, if it was kept. */
    Optional<ViewOutcome> read(long seed) throws IOException {
        if (!Files.exists(file(seed))) {
            return Optional.empty();
        }
        List<String> lines = Files.readAllLines(file(seed));
        List<ViewOutcome.FootError> supported = new ArrayList<>();
        for (String line : lines.subList(HEAD, lines.size())) {
            String[] parts = line.split(" ", 2);
            supported.add(new ViewOutcome.FootError(Double.parseDouble(parts[0]), Double.parseDouble(parts[1])));
        }
        return Optional.of(new ViewOutcome(
                CourtView.of(seed),
                CalibrationStatus.valueOf(lines.get(0)),
                lines.get(1),
                supported,
                Double.parseDouble(lines.get(2)),
                Integer.parseInt(lines.get(3)),
                Double.parseDouble(lines.get(4))));
    }

    void write(ViewOutcome outcome) throws IOException {
        List<String> lines = new ArrayList<>(List.of(
                outcome.status().name(),
                outcome.reason(),
                String.valueOf(outcome.medianMetres()),
                String.valueOf(outcome.feet()),
                String.valueOf(outcome.seconds())));
        for (ViewOutcome.FootError error : outcome.supported()) {
            lines.add(error.metres() + " " + error.squaredNormalised());
        }
        Files.createDirectories(folder);
        Path beside = folder.resolve(outcome.view().seed() + ".part");
        Files.write(beside, lines);
        Files.move(beside, file(outcome.view().seed()), StandardCopyOption.REPLACE_EXISTING);
    }
}
