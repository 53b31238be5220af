package floorgauge.sampleclips.render;

import floorgauge.court.calibration.OpenCv;
import floorgauge.court.failure.MendableException;
import floorgauge.sampleclips.render.camera.Lens;
import floorgauge.sampleclips.render.picture.FrameRenderer;
import floorgauge.sampleclips.truth.CocoPoseWriter;
import floorgauge.sampleclips.truth.FilmHead;
import floorgauge.sampleclips.truth.FrameTruth;
import floorgauge.sampleclips.truth.MotTruthWriter;
import floorgauge.sampleclips.truth.TruthWriter;
import floorgauge.vision.film.FilmSettings;
import floorgauge.vision.film.FilmWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.opencv.core.CvType;
import org.opencv.core.Mat;

/**
 * Renders a plan to a film with its truth. Files are written beside their final names and moved there at the end, so a film
 * that is there is whole.
 */
public final class RenderJob {

    /** Told after each frame. */
    @FunctionalInterface
    public interface Progress {
        /** @param done frames so far, of {@code total} */
        void frames(int done, int total);
    }

    private final RenderPlan plan;
    private final Path folder;
    private final String name;

    /**
     * @param folder made if missing
     * @param name of the files, without ending
     */
    public RenderJob(RenderPlan plan, Path folder, String name) {
        this.plan = plan;
        this.folder = folder;
        this.name = name;
    }

    /**
     * Renders.
     *
     * @throws MendableException if the folder cannot be written
     */
    public RenderedFilm run(Progress progress) {
        try {
            Files.createDirectories(folder);
            return render(progress);
        } catch (IOException | java.io.UncheckedIOException e) {
            throw new MendableException(folder + ": cannot write the film here (" + e.getMessage()
                    + "); choose a folder that can be written");
        }
    }

    private RenderedFilm render(Progress progress) throws IOException {
        Path film = part(".mp4");
        Path truth = part(".truth.json");
        Path tracks = part(".mot.txt");
        Path poses = part(".poses.json");
        Lens lens = plan.path().at(0).lens();
        FilmHead head = new FilmHead(
                name + ".mp4",
                plan.scene().name(),
                plan.seed(),
                plan.cameraStyle(),
                lens.width(),
                lens.height(),
                plan.times().nominalRate(),
                plan.scene().rules(),
                plan.scene().people());
        String digest;
        try (Writers writers = new Writers(
                        new TruthWriter(truth, head), new MotTruthWriter(tracks), new CocoPoseWriter(poses, head));
                FilmWriter out = FilmWriter.create(film, settings(lens))) {
            digest = frames(writers, out, progress);
        }
        Path wholeTruth = finish(truth, ".truth.json");
        Path wholeTracks = finish(tracks, ".mot.txt");
        Path wholePoses = finish(poses, ".poses.json");
        // The film last: where it stands, everything beside it is whole.
        return new RenderedFilm(
                finish(film, ".mp4"),
                wholeTruth,
                wholeTracks,
                wholePoses,
                plan.times().count(),
                digest);
    }

    private record Writers(TruthWriter truth, MotTruthWriter tracks, CocoPoseWriter poses) implements AutoCloseable {

        void write(FrameTruth frame) {
            truth.write(frame);
            tracks.write(frame);
            poses.write(frame);
        }

        @Override
        public void close() {
            try (truth;
                    tracks;
                    poses) {
                // closes all three, whichever fails
            }
        }
    }

    private FilmSettings settings(Lens lens) {
        return FilmSettings.of(lens.width(), lens.height(), plan.times().nominalRate())
                .withBitsPerSecond(plan.bitsPerSecond());
    }

    /** Frames are coded and written while the next is drawn. */
    private String frames(Writers writers, FilmWriter out, Progress progress) {
        OpenCv.load();
        MessageDigest digest = sha256();
        Mat picture = new Mat();
        try (FrameRenderer renderer = new FrameRenderer(plan.scene(), plan.gym(), plan.path(), plan.settings());
                OneBehind writing = new OneBehind()) {
            picture.create(renderer.height(), renderer.width(), CvType.CV_8UC3);
            byte[] written = new byte[3 * renderer.width() * renderer.height()];
            int total = plan.times().count();
            for (int i = 0; i < total; i++) {
                double time = plan.times().at(i);
                byte[] drawn = renderer.render(i, time);
                FrameTruth truth = renderer.truth(i, time);
                writing.await();
                System.arraycopy(drawn, 0, written, 0, drawn.length);
                writing.start(() -> {
                    digest.update(written);
                    picture.put(0, 0, written);
                    out.write(picture, time);
                    writers.write(truth);
                });
                progress.frames(i + 1, total);
            }
            writing.await();
        }
        picture.release();
        return HexFormat.of().formatHex(digest.digest());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private Path part(String ending) {
        return folder.resolve(name + ending + ".part");
    }

    private Path finish(Path part, String ending) throws IOException {
        return Files.move(part, folder.resolve(name + ending), StandardCopyOption.REPLACE_EXISTING);
    }
}
