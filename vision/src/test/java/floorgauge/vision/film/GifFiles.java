package floorgauge.vision.film;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.ImageOutputStream;

/** Animated GIFs, written with Java's own image library. */
final class GifFiles {

    private static final String METADATA_FORMAT = "javax_imageio_gif_image_1.0";

    private GifFiles() {}

    /** One picture for each delay, which lasts so many seconds (to a hundredth). */
    static void write(Path gif, int width, int height, double... delays) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("gif").next();
        try (ImageOutputStream out = ImageIO.createImageOutputStream(gif.toFile())) {
            writer.setOutput(out);
            writer.prepareWriteSequence(null);
            for (int i = 0; i < delays.length; i++) {
                BufferedImage picture = picture(width, height, i);
                writer.writeToSequence(new IIOImage(picture, null, metadata(writer, picture, delays[i])), null);
            }
            writer.endWriteSequence();
        }
        writer.dispose();
    }

    private static BufferedImage picture(int width, int height, int number) {
        BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = picture.createGraphics();
        graphics.setColor(Color.GRAY);
        graphics.fillRect(0, 0, width, height);
        graphics.setColor(Color.RED);
        graphics.fillRect(number * 7, 10, 10, 10);
        graphics.dispose();
        return picture;
    }

    private static IIOMetadata metadata(ImageWriter writer, BufferedImage picture, double delay) throws IOException {
        IIOMetadata metadata = writer.getDefaultImageMetadata(new ImageTypeSpecifier(picture), null);
        IIOMetadataNode root = (IIOMetadataNode) metadata.getAsTree(METADATA_FORMAT);
        IIOMetadataNode control = (IIOMetadataNode)
                root.getElementsByTagName("GraphicControlExtension").item(0);
        control.setAttribute("delayTime", Long.toString(Math.round(delay * 100)));
        metadata.setFromTree(METADATA_FORMAT, root);
        return metadata;
    }
}
