# Las páginas de fotos y paneles.
