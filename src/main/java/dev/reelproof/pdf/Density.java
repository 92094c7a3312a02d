package dev.reelproof.pdf;

/** How tightly the table is set; the first that keeps the certificate within its pages is taken. */
enum Density {
    ROOMY(8.2f),
    DENSE(7.6f),
    TIGHT(PageLayout.LEAST_SIZE);

    private final float tableSize;

    /** @param tableSize size of the text of the table, in points */
    Density(float tableSize) {
        this.tableSize = tableSize;
    }

    float tableSize() {
        return tableSize;
    }
}
