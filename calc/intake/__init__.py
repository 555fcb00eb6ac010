"""Reading of input tables: cells become typed values and findings, by the declarations of the inputs."""
