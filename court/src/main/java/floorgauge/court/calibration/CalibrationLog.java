package floorgauge.court.calibration;

import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.RuleSet;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The calibrations of a film, one a picture, in a file of the folder for temporary files: a film may be hours long, so
 * only the time, status and place in the file of each (17 bytes) stay in memory. The file vanishes with this object, at the
 * latest with the program.
 *
 * <p>Added to by one thread; read by any after that.
 */
final class CalibrationLog {

    private final FileChannel file;
    private final List<RuleSet> rules = new ArrayList<>();
    private double[] times = new double[64];
    private long[] starts = new long[64];
    private byte[] statuses = new byte[64];
    private int count;
    private long end;

    CalibrationLog() {
        Path folder = Path.of(System.getProperty("java.io.tmpdir"));
        try {
            file = FileChannel.open(
                    Files.createTempFile(folder, "floorgauge-court", ".tmp"),
                    StandardOpenOption.READ,
                    StandardOpenOption.WRITE,
                    StandardOpenOption.DELETE_ON_CLOSE);
        } catch (IOException e) {
            throw cannotWrite(e);
        }
    }

    private static MendableException cannotWrite(IOException e) {
        return new MendableException(
                "where the court lies cannot be kept in the folder for temporary files, "
                        + System.getProperty("java.io.tmpdir") + " (" + e.getMessage()
                        + "); make room there: a moving camera takes 3 MB a minute of film",
                e);
    }

    /**
     * @param timeSeconds above that of the last one
     * @throws IllegalArgumentException where it is not
     * @throws MendableException where the file can't be written
     */
    void add(double timeSeconds, CourtCalibration calibration) {
        if (count > 0 && !(timeSeconds > times[count - 1])) {
            throw new IllegalArgumentException(
                    "pictures come in order of time: " + timeSeconds + " s after " + times[count - 1]);
        }
        if (count == times.length) {
            times = Arrays.copyOf(times, 2 * count);
            starts = Arrays.copyOf(starts, 2 * count);
            statuses = Arrays.copyOf(statuses, 2 * count);
        }
        byte[] bytes = bytes(calibration);
        try {
            ByteBuffer buffer = ByteBuffer.wrap(bytes);
            for (long at = end; buffer.hasRemaining(); ) {
                at += file.write(buffer, at);
            }
        } catch (IOException e) {
            throw cannotWrite(e);
        }
        times[count] = timeSeconds;
        starts[count] = end;
        statuses[count] = (byte) calibration.status().ordinal();
        end += bytes.length;
        count++;
    }

    int size() {
        return count;
    }

    double timeSeconds(int index) {
        return times[index];
    }

    CalibrationStatus status(int index) {
        return CalibrationStatus.values()[statuses[index]];
    }

    /** Index of the last picture at or before a time; -1 where there is none. */
    int atOrBefore(double timeSeconds) {
        int index = Arrays.binarySearch(times, 0, count, timeSeconds);
        return index >= 0 ? index : -index - 2;
    }

    /** The calibration of a picture, equal to the one that was added. */
    CourtCalibration read(int index) {
        long after = index + 1 < count ? starts[index + 1] : end;
        ByteBuffer buffer = ByteBuffer.allocate((int) (after - starts[index]));
        try {
            while (buffer.hasRemaining()) {
                if (file.read(buffer, starts[index] + buffer.position()) < 0) {
                    throw new IOException("the file with the court's places was cut short");
                }
            }
            return calibration(status(index), new DataInputStream(new ByteArrayInputStream(buffer.array())));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private byte[] bytes(CourtCalibration c) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(2048);
        DataOutputStream out = new DataOutputStream(bytes);
        try {
            if (!rules.contains(c.rules())) {
                rules.add(c.rules());
            }
            out.writeInt(rules.indexOf(c.rules()));
            out.writeUTF(c.reason());
            out.writeInt(c.widthPixels());
            out.writeInt(c.heightPixels());
            if (c.projection().isPresent()) {
                Lens lens = c.projection().get().lens();
                write(out, c.projection().get().floorToIdeal().rowMajor());
                write(out, lens.centreX(), lens.centreY(), lens.radiusPixels(), lens.k(), lens.l());
                write(out, c.covariance().rowMajor());
            }
            out.writeInt(c.coverage().hull().size());
            for (FloorPoint p : c.coverage().hull()) {
                write(out, p.xMetres(), p.yMetres());
            }
            out.writeDouble(c.coverage().marginMetres());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    private CourtCalibration calibration(CalibrationStatus status, DataInputStream in) throws IOException {
        RuleSet own = rules.get(in.readInt());
        String reason = in.readUTF();
        int width = in.readInt();
        int height = in.readInt();
        Optional<FloorProjection> projection = Optional.empty();
        ProjectionCovariance covariance = ProjectionCovariance.zero();
        if (status != CalibrationStatus.NONE) {
            Homography homography = Homography.of(read(in, 9));
            double[] lens = read(in, 5);
            projection =
                    Optional.of(new FloorProjection(homography, new Lens(lens[0], lens[1], lens[2], lens[3], lens[4])));
            covariance = ProjectionCovariance.of(read(in, FloorProjection.PARAMETERS * FloorProjection.PARAMETERS));
        }
        List<FloorPoint> hull = new ArrayList<>();
        for (int corners = in.readInt(); corners > 0; corners--) {
            double[] at = read(in, 2);
            hull.add(new FloorPoint(at[0], at[1]));
        }
        return new CourtCalibration(
                own, status, reason, width, height, projection, covariance, new Coverage(hull, in.readDouble()));
    }

    private static void write(DataOutputStream out, double... values) throws IOException {
        for (double value : values) {
            out.writeDouble(value);
        }
    }

    private static double[] read(DataInputStream in, int values) throws IOException {
        double[] read = new double[values];
        for (int i = 0; i < values; i++) {
            read[i] = in.readDouble();
        }
        return read;
    }
}
