# Las clases de sellador de trade/sealers.toml.

sealer-acrylic-solvent = Acrílico, base solvente
sealer-acrylic-water = Acrílico, base agua
sealer-epoxy-water = Epóxico base agua, 2 componentes
sealer-epoxy-solid = Epóxico, 100 % sólidos
sealer-urethane-one-part = Uretano, 1 componente, de humedad o base agua
sealer-urethane-two-part = Uretano o poliaspártico, 2 componentes
sealer-penetrating-silane = Silano o siloxano penetrante
sealer-silicate-densifier = Endurecedor de silicato de litio o sodio
sealer-oil-wax = Aceite o cera penetrante
sealer-floor-finish = Cera acrílica de piso (encima)
